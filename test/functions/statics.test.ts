/**
 * Static characteristics on a run small enough to work out by hand from the definitions of ANSI/ISA-S37.1 (vocabulary).
 * Zero 0.01; net up 0, 0.501, 1.002, 1.502, 2.000 and down 1.505, 1.006, 0.503, 0.001; RO = 2.
 */
import { column, columns, fault, number, table } from './call';

const forces = column(0, 25, 50, 75, 100, 75, 50, 25, 0);
const readings = column(0.01, 0.511, 1.012, 1.512, 2.01, 1.515, 1.016, 0.513, 0.011);

describe('static characteristics by hand', () => {
  test('sensitivity is the net output at the greatest force, in proportion at another capacity', () => {
    expect(number('SENSITIVITY', forces, readings)).toBeCloseTo(2, 14);
    expect(number('SENSITIVITY', forces, readings, 250)).toBeCloseTo(5, 14);
  });
  test('terminal non-linearity: 0.002 of 2 at 50 and 75, the first of equal ones', () => {
    expect(number('NONLINEARITY', forces, readings)).toBeCloseTo(0.001, 12);
  });
  test('deviations from the terminal line: 0, 0.0005, 0.001, 0.001, 0', () => {
    const found = table('DEVIATIONS', forces, readings);
    expect(found[0]).toEqual(['Force', 'Deviation']);
    expect(found.slice(1).map(([force]) => force)).toEqual([0, 25, 50, 75, 100]);
    [0, 0.0005, 0.001, 0.001, 0].forEach((deviation, i) => expect(found[i + 1][1]).toBeCloseTo(deviation, 12));
  });
  test('best fit line: deviations sum to zero and are orthogonal to force', () => {
    const found = table('DEVIATIONS', forces, readings, 'bestfit', false);
    expect(found.reduce((sum, [, deviation]) => sum + deviation, 0)).toBeCloseTo(0, 12);
    expect(found.reduce((sum, [force, deviation]) => sum + force * deviation, 0)).toBeCloseTo(0, 10);
  });
  test('zero fit line: slope ΣFX/ΣF² = 375.475/18750 through the zero', () => {
    const slope = (25 * 0.501 + 50 * 1.002 + 75 * 1.502 + 100 * 2) / 18750;
    expect(table('DEVIATIONS', forces, readings, 'zerofit', false)[4][1]).toBeCloseTo((2 - 100 * slope) / 2, 12);
  });
  test('hysteresis: 0.004 of 2 at 50, 0.0015 at 75', () => {
    expect(number('HYSTERESIS', forces, readings)).toBeCloseTo(0.002, 12);
    expect(number('HYSTERESIS', forces, readings, 75)).toBeCloseTo(0.0015, 12);
  });
  test('a greatest force that is held counts as ascending once: the later readings there are on the way down', () => {
    expect(number('SENSITIVITY', column(0, 50, 100, 100, 0), column(0, 1, 2, 2.002, 0))).toBeCloseTo(2, 14);
    expect(number('HYSTERESIS', column(0, 50, 100, 100, 0), column(0, 1, 2, 2.002, 0), 100)).toBeCloseTo(0.001, 12);
  });
  test('combined error: 0.006 of 2 at 50 on the way down', () => {
    expect(number('COMBINEDERROR', forces, readings)).toBeCloseTo(0.003, 12);
  });
  test('zero return: 0.001 of 2', () => {
    expect(number('ZERORETURN', forces, readings)).toBeCloseTo(0.0005, 12);
  });
  test('error band: the line midway between 1.505/75 and 2.000/100 in deviation', () => {
    // Least of max|X − k·F|: 1.006 − 50k meets −(2 − 100k) at k = 3.006/150.
    const k = 3.006 / 150;
    const [[halfWidth, output]] = table('ERRORBAND', forces, readings, false);
    expect(output).toBeCloseTo(100 * k, 12);
    expect(halfWidth).toBeCloseTo((100 * k - 2) / (100 * k), 12);
  });
  test('repeatability: spread 0.002 of RO 2.001 between two runs', () => {
    const second = readings.flat().map((value, i) => Number(value) + (i === 0 ? 0 : i === 4 ? 0.002 : 0.0005));
    const two = columns(readings.flat(), second);
    expect(number('REPEATABILITY', forces, two)).toBeCloseTo(0.002 / 2.001, 12);
  });
  test('the worst figure keeps its sign', () => {
    expect(number('NONLINEARITY', column(0, 50, 100), column(0, 0.99, 2))).toBeCloseTo(-0.005, 12);
    expect(number('HYSTERESIS', column(0, 50, 100, 50, 0), column(0, 1, 2, 0.99, 0))).toBeCloseTo(-0.005, 12);
  });
  test('creep between 5 and 25 minutes, linear between readings', () => {
    expect(number('CREEP', column(0, 10, 30), column(2, 2.001, 2.0014), 2, 5, 25)).toBeCloseTo((2.0013 - 2.0005) / 2, 12);
  });
  test('zero balance and asymmetry are signed', () => {
    expect(number('ZEROBALANCE', -0.02, 2)).toBeCloseTo(-0.01, 14);
    expect(number('ASYMMETRY', 1.999, -2.001)).toBeCloseTo(-0.001, 14);
  });
});

describe('static characteristics, runs that bear no answer', () => {
  test('hysteresis is #N/A if only the zeros meet, as when the forces on the way down are others', () => {
    expect(fault('HYSTERESIS', column(0, 50, 100, 50.001, 0), column(0, 1, 2, 1.1, 0))).toMatch(/^#N\/A: no force stands both/);
  });
  test('one run without a reading at the greatest force is not judged by a smaller one', () => {
    expect(fault('SENSITIVITY', column(0, 50, 100, 50, 0), column(0, 1, '', 1, 0))).toBe('#VALUE!: readings row 3: found nothing at the greatest force; expected a reading');
  });
  test('hysteresis without a way down is #N/A', () => {
    expect(fault('HYSTERESIS', column(0, 50, 100), column(0, 1, 2))).toMatch(/^#N\/A: no force stands both/);
  });
  test('hysteresis at a force that was not applied is #N/A and names the force', () => {
    expect(fault('HYSTERESIS', forces, readings, 60)).toMatch(/^#N\/A: force 60 does not stand/);
  });
  test('repeatability of one run is #N/A', () => {
    expect(fault('REPEATABILITY', forces, readings)).toMatch(/^#N\/A: found 1 run/);
  });
  test('zero return without a last zero is #N/A and names the run', () => {
    expect(fault('ZERORETURN', column(0, 50, 100), column(0, 1, 2))).toMatch(/^#N\/A: run 1 has no zero reading/);
  });
  test('a run without a first zero is #VALUE! and says how to mend it', () => {
    expect(fault('SENSITIVITY', column(50, 100), column(1, 2))).toMatch(/^#VALUE!: readings row 1: found the reading at force 50 before any zero reading.*add a row with force 0/);
  });
  test('no span is #VALUE!', () => {
    expect(fault('NONLINEARITY', column(0, 50, 100), column(1, 2, 1))).toMatch(/^#VALUE!: readings row 3: found a net output of 0/);
  });
  test('a run without a reading at the greatest force names row and run', () => {
    expect(fault('SENSITIVITY', column(0, 50, 100), columns([0, 1, 2], [0, 1, '']))).toMatch(/^#VALUE!: readings row 3, column 2: found nothing at the greatest force/);
  });
  test('creep past the record is #N/A', () => {
    expect(fault('CREEP', column(0, 10), column(1, 2), 2, 0, 20)).toMatch(/^#N\/A: no reading at 20 min: the record runs from 0 to 10 min/);
  });
  test('times that fall back name the row', () => {
    expect(fault('CREEP', column(0, 10, 10), column(1, 2, 3), 2)).toMatch(/^#VALUE!: times row 3: found 10 after 10/);
  });
});
