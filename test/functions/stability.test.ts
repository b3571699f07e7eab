/** Stability and interval as cell functions: shapes, limits of the classes, wording. */
import type { Cell } from '../../src/functions/cells';
import { CellFault } from '../../src/functions/faults';
import { column, fault, number, table } from './call';

const before = column(0, 0.02);
const message = (cell: unknown) => (cell instanceof CellFault ? `${cell.code}: ${cell.message}` : cell);

describe('SHIFT', () => {
  test('fraction of the old reading by hand, shaped like forces; zero rows and blanks stay blank', () => {
    // At 50: 1 to 1.0015; at 100: 2 to 2.002.
    const found = table('SHIFT', before, column(0.001, 0.02001), column(0, 50, null, 100));
    expect(found[0][0]).toBe('');
    expect(found[2][0]).toBe('');
    expect(found[1][0]).toBeCloseTo(0.0015, 12);
    expect(found[3][0]).toBeCloseTo(0.001, 12);
    expect(table('SHIFT', before, before, [[50, 100]])).toEqual([[0, 0]]);
  });
  test('compression is a fraction of its own reading: greater output is positive there too', () => {
    expect(table('SHIFT', column(0, -0.02), column(0, -0.02002), column(-50))[0][0]).toBeCloseTo(0.001, 12);
  });
  test('from old to new and back: (1 + a)(1 + b) = 1', () => {
    const later = column(0.0003, 0.02003, 1e-8);
    const [there, back] = [table('SHIFT', before, later, column(80))[0][0], table('SHIFT', later, before, column(80))[0][0]];
    expect((1 + there) * (1 + back)).toBeCloseTo(1, 14);
  });
  test('an old response of 0 has no fraction', () => {
    expect(message(table('SHIFT', column(-1, 0.02), before, column(50, 100))[0][0])).toMatch(/^#N\/A: the old response at 50 is 0/);
  });
  test('errors name which coefficients', () => {
    expect(fault('SHIFT', before, column(null), column(50))).toMatch(/^#VALUE!: newCoefficients: found none/);
    expect(fault('SHIFT', column(null, 1), before, column(50))).toMatch(/^#VALUE!: oldCoefficients row 1: found nothing/);
  });
});

describe('STABILITY', () => {
  test('the limits are 0.032 % (AA) and 0.16 % (A), ASTM E74 (from memory)', () => {
    const forces = column(0, 50, 100);
    const grown = (part: number) => column(0, 0.02 * (1 + part));
    const verdict = (part: number, name: string) => table('STABILITY', before, grown(part), forces, name, null, false)[0].slice(2);
    expect([verdict(0.000319, 'AA'), verdict(-0.000321, 'AA')]).toEqual([[0.00032, 'within'], [0.00032, 'outside']]);
    expect([verdict(-0.00159, 'a'), verdict(0.00161, 'a')]).toEqual([[0.0016, 'within'], [0.0016, 'outside']]);
  });
  test('the worst shift keeps its sign and tells its force', () => {
    const [header, row] = table('STABILITY', before, column(-0.002, 0.02001), column(20, 50, 100), 'A');
    expect(header).toEqual(['Worst shift', 'At force', 'Limit', 'Verdict']);
    expect(row[0]).toBeCloseTo(-0.0045, 12);
    expect(row[1]).toBe(20);
  });
  test('a limit of one’s own takes the place of that of the class', () => {
    expect(table('STABILITY', before, column(0, 0.02001), column(50), 'AA', 0.001, false)[0].slice(2)).toEqual([0.001, 'within']);
  });
  test('only zero rows, or an unknown class, is an error', () => {
    expect(fault('STABILITY', before, before, column(0), 'A')).toMatch(/^#VALUE!: forces: found no force other than 0/);
    expect(fault('STABILITY', before, before, column(1), 'B')).toBe('#VALUE!: loadingClass: found the text "B"; expected "AA" or "A"');
  });
});

describe('DRIFT', () => {
  const dates = column(45000, 45365.25, 45730.5, 46095.75);
  const drift = (values: Cell[], ...rest: (number | null)[]) => table('DRIFT', dates, column(...values), rest[0] ?? null, rest[1] ?? null, null, false)[0];

  test('a straight drift meets the limit where its line does, four years on', () => {
    const [slope, error, date, limit] = drift([2, 2.001, 2.002, 2.003], 1.99, 2.007);
    expect(slope).toBeCloseTo(0.001, 12);
    expect(error).toBeCloseTo(0, 12);
    expect(date).toBeCloseTo(46095.75 + 4 * 365.25, 5);
    expect(limit).toBe('upper');
  });
  test('scatter brings the date forward', () => {
    expect(drift([2.0002, 2.0008, 2.0022, 2.0028], 1.99, 2.012)[2]).toBeLessThan(45000 + 12 * 365.25);
  });
  test('without limits the date is blank; without a drift it never comes; past already is said', () => {
    expect(drift([2, 2.001, 2.002, 2.003]).slice(2)).toEqual(['', '']);
    expect(drift([2, 2, 2, 2], 1.9, 2.1).map(message).slice(2)).toEqual(['#N/A: the prediction band never meets the lower limit, 1.9, nor the upper limit, 2.1', '']);
    expect(drift([2, 2.001, 2.002, 2.003], null, 2.002).map(message).slice(2)).toEqual(
      ['#N/A: on the last date the prediction band is past the upper limit, 2.002, already', 'upper']);
  });
  test('the order of the rows and blank rows do not matter', () => {
    const values = [2.0002, 2.0008, 2.0022, 2.0028];
    const shuffled = table('DRIFT', column(45730.5, null, 45000, 46095.75, 45365.25), column(2.0022, null, 2.0002, 2.0028, 2.0008), null, 2.01, null, false)[0];
    drift(values, null, 2.01).slice(0, 3).forEach((value, i) => expect(shuffled[i]).toBeCloseTo(value, 6));
  });
  test('too few values, what is no date, and limits the wrong way round are named', () => {
    expect(fault('DRIFT', column(1, 2), column(1, 2))).toMatch(/^#VALUE!: values: found 2; a drift/);
    expect(fault('DRIFT', column(1, 2, -3), column(1, 2, 3))).toBe('#VALUE!: dates row 3: found -3; expected a date, as the sheet counts days');
    expect(fault('DRIFT', dates, column(1, 2, 3, 4), 5, 3)).toMatch(/^#VALUE!: lower: found 5, with upper 3/);
    expect(fault('DRIFT', column(5, 5, 5), column(1, 2, 3))).toMatch(/^#VALUE!: found 1 different date; /);
  });
});

describe('INTERVAL and its kin', () => {
  test('staircase is the default: inside extends by a tenth, outside shortens, bounds hold', () => {
    expect(number('INTERVAL', 100, column('inside'))).toBeCloseTo(110, 12);
    expect(number('INTERVAL', 100, column('Outside'))).toBeCloseTo(42.4098, 4);
    expect(number('INTERVAL', 100, column(-0.9))).toBe(100);
    expect(number('INTERVAL', 100, column('inside'), null, null, null, null, 0.25)).toBeCloseTo(125, 12);
    expect(number('INTERVAL', 100, column('outside'), null, null, 60)).toBe(60);
  });
  test('reliability takes the counts inside and outside', () => {
    expect(number('INTERVAL', 12, column(16, 4), 0.95, 'reliability')).toBeCloseTo(2.7584, 4);
    expect(number('INTERVAL', 12, column(16, 4), 0.95, 'reliability', 6, 24)).toBe(6);
    expect(number('INTERVAL', 12, [[5, 0]], 0.95, 'reliability', 6, 24)).toBe(24);
    expect(fault('INTERVAL', 12, [[5, 0]], 0.95, 'reliability')).toMatch(/^#N\/A: none of 5 was outside/);
  });
  test('what found should hold is told by method', () => {
    expect(fault('INTERVAL', 12, column(16, 4))).toMatch(/^#VALUE!: found: found several cells; expected one for "staircase"/);
    expect(fault('INTERVAL', 12, column(null))).toMatch(/^#VALUE!: found: found nothing; expected "inside", "outside"/);
    expect(fault('INTERVAL', 12, column('inside'), 0.9, 'reliability')).toMatch(/^#VALUE!: found: found the text "inside"; expected a number/);
    expect(fault('INTERVAL', 12, column(1.5, 1), 0.9, 'reliability')).toBe('#VALUE!: found row 1: found 1.5; expected a whole number from 0 to 1000000');
    expect(fault('INTERVAL', 12, column('inside'), 1)).toBe('#VALUE!: target: found 1; expected a number between 0 and 1, such as 0.9');
    expect(fault('INTERVAL', 12, column('inside'), null, null, 9, 6)).toBe('#VALUE!: greatest: found 6; expected not less than least, 9');
  });
  test('INTERVALTEST heads its columns and leaves a target that is reached unrejected', () => {
    const [header, row] = table('INTERVALTEST', 365, [[15, 5]], 0.95, 0.5);
    expect(header).toEqual(['Next interval', 'Part inside', 'Rejection', 'Lower', 'Upper']);
    expect(Math.round(row[0])).toBe(231);
    expect(table('INTERVALTEST', 365, [[20, 0]], 0.95, 0.5, false)[0].slice(0, 3)).toEqual([365, 1, '']);
  });
  test('DRIFTINTERVAL: limits and degree are read, and one limit at least is wanted', () => {
    const times = column(70, 86, 104, 135, 167, 173);
    const changes = column(0.1, 0.11, 0.251, 0.299, 0.403, 0.615);
    const [time, end, value] = table('DRIFTINTERVAL', times, changes, 10.03, 0.28, 9, 11, null, 0.9, 2, false)[0];
    expect(time).toBeCloseTo(140.1, 1); // NASA-HDBK-8739.19-5, test/published/intervals.json
    expect(end).toBe('upper');
    expect(value).toBeCloseTo(10.03 + 0.00015740675 * time + 1.6737925e-5 * time ** 2, 6);
    expect(fault('DRIFTINTERVAL', times, changes, 10.03, 0.28)).toMatch(/^#VALUE!: lower, upper, greatestUncertainty: found none/);
    expect(fault('DRIFTINTERVAL', times, changes, 10.03, 0.28, 12, 11)).toMatch(/^#VALUE!: lower: found 12, with upper 11/);
    expect(fault('DRIFTINTERVAL', column(0, 1, 2), column(0, 1, 2), 1, 0, null, 9)).toBe('#VALUE!: times row 1: found 0; expected a time greater than 0');
    expect(fault('DRIFTINTERVAL', column(1, 2), column(1, 2), 1, 0, null, 9, null, null, 2)).toMatch(/^#VALUE!: found 2 changes for a polynomial of degree 2/);
  });
});
