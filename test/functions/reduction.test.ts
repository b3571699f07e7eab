import fc from 'fast-check';
import { column, columns, fault, number, table } from './call';

const forces = column(0, 50, 100, 0, 50, 0);

describe('NET', () => {
  const readings = column(0.010, 1.010, 2.012, 0.014, 1.013, 0.016);
  const close = (found: any[][], expected: number[]) => expected.forEach((value, i) => expect(found[i][0]).toBeCloseTo(value, 12));

  test('"initial" takes the zero before the run off every row', () => {
    close(table('NET', forces, readings), [0, 1, 2.002, 0.004, 1.003, 0.006]);
  });
  test('"average" takes the mean of the first and the last zero off', () => {
    close(table('NET', forces, readings, 'average'), [-0.003, 0.997, 1.999, 0.001, 1.0, 0.003]);
  });
  test('"interpolated" is linear in row order between the zeros that bracket a row', () => {
    const third = 0.004 / 3;
    close(table('NET', forces, readings, 'interpolated'), [0, 1 - third, 2.002 - 2 * third, 0, 0.998, 0]);
  });
  test('a missed reading keeps its place in time', () => {
    close(table('NET', column(0, 50, 100, 0), column(0, null, 2, 0.003), 'interpolated').filter(([v]) => v !== ''), [0, 1.998, 0]);
  });
  test('"average" and "interpolated" need a zero after the last force, and name it', () => {
    expect(fault('NET', column(0, 50, 100), column(0, 1, 2), 'average')).toBe('#VALUE!: readings row 3: no zero reading follows it; the "average" zero needs one after the run');
  });
  test('each run has its own zero', () => {
    expect(table('NET', column(0, 100), columns([1, 3], [2, 5]))).toEqual([[0, 0], [2, 3]]);
  });
  test('a run that does not start with a zero says how to mend it', () => {
    expect(fault('NET', column(50, 0), column(1, 0))).toMatch(/^#VALUE!: readings row 1: found the reading at force 50 before any zero reading; expected the run to start with one at force 0/);
  });
});

describe('temperature', () => {
  test('effects: slopes over temperature, span effect relative to the fitted span at 23 °C', () => {
    const [[zero, span]] = table('TEMPEFFECT', column(3, 23, 43), column(0.008, 0.012, 0.016), column(1.996, 2, 2.004), null, false);
    expect(zero).toBeCloseTo(0.0002, 14);
    expect(span).toBeCloseTo(0.0001, 14);
  });
  test('a block is no list of temperatures', () => {
    expect(fault('TEMPEFFECT', columns([3, 23], [33, 43]), columns([1, 2], [3, 4]), column(2, 2, 2, 2))).toBe('#VALUE!: temperatures: found 2 rows and 2 columns; expected one row or one column');
  });
  test('another reference temperature refers the span effect to the span there', () => {
    const [, [, span]] = table('TEMPEFFECT', column(0, 50), column(0, 0), column(1, 2), 50);
    expect(span).toBeCloseTo(0.01, 14);
  });
  test('one temperature bears no effect, and says so', () => {
    expect(fault('TEMPEFFECT', column(20, 20), column(1, 2), column(2, 2))).toBe('#VALUE!: zeros: found readings at 1 different temperature; expected at least 2');
  });
  test('correction undoes the effects it was given (property)', () => {
    const small = fc.double({ min: -0.001, max: 0.001, noNaN: true });
    fc.assert(fc.property(
      small, small, fc.double({ min: -20, max: 60, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -0.5, max: 0.5, noNaN: true }),
      (zeroEffect, spanEffect, temperature, net, zero) => {
        const difference = temperature - 23;
        const warm = zero + zeroEffect * difference + net * (1 + spanEffect * difference);
        const [[corrected]] = table('TEMPCORRECT', [[warm]], [[temperature]], zeroEffect, spanEffect, null, zero);
        expect(corrected).toBeCloseTo(zero + net, 12);
      },
    ));
  });
  test('a column of temperatures serves every run beside it; blanks stay blank', () => {
    const found = table('TEMPCORRECT', columns([1, 2], [1, null]), column(23, 33), 0.01, 0);
    expect(found[0]).toEqual([1, 1]);
    expect(found[1][0]).toBeCloseTo(1.9, 14);
    expect(found[1][1]).toBe('');
  });
  test('a reading without a temperature names the row', () => {
    expect(fault('TEMPCORRECT', column(1, 2), column(23, null), 0, 0)).toBe('#VALUE!: temperatures row 2: found nothing beside a reading; expected a temperature');
  });
  test('temperatures of another shape are refused with both shapes', () => {
    expect(fault('TEMPCORRECT', column(1, 2, 3), column(23, 24), 0, 0)).toMatch(/temperatures: found 2 rows and 1 column for 3 rows and 1 column of readings/);
  });
  test('steel deflection: K = 0.00027 /°C from 23 °C (ASTM E74, from memory)', () => {
    expect(table('ELASTICTEMP', column(1000), [[33]])[0][0]).toBeCloseTo(997.3, 10);
    expect(table('ELASTICTEMP', column(1000), [[33]], 0.0003, 20)[0][0]).toBeCloseTo(996.1, 10);
  });
  test('a blank reference is 23, a blank zero is 0', () => {
    expect(number('ZEROBALANCE', table('TEMPCORRECT', [[2]], [[23]], 0.1, 0.1)[0][0], 2)).toBe(1);
  });
});
