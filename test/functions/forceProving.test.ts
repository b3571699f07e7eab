/**
 * Force-proving instruments on series small enough to work out by hand from the formulas of ISO 376:2011 (from memory).
 * Forces 50, 75, 100; Xr = F/50 + e·(1, −2, 1): the line fitted to it is F/50, so the misses are e, −2e, e.
 */
import type { Cell } from '../../src/functions/cells';
import { column, fault, table } from './call';

const forces = column(50, 75, 100);
const e = 0.0001;
const mean = [1 + e, 1.5 - 2 * e, 2 + e];
/** X1 and X5 lie 0.0006 above and below Xr at 50; X2 lies 0.0003 above X1 there; X4′ and X6′ 0.002 and 0.001 above X3 and X5. */
const series: Cell[][] = [
  [mean[0] + 0.0006, mean[0] + 0.0009, mean[0], mean[0] + 0.002, mean[0] - 0.0006, mean[0] + 0.0004],
  [mean[1], mean[1], mean[1], mean[1], mean[1], mean[1]],
  [mean[2], mean[2], mean[2], null, mean[2], ''],
];
const increasing = series.map(([x1, x2, x3, , x5]) => [x1, x2, x3, null, x5, null]);

describe('FORCEPROVING by hand (formulas of ISO 376, from memory)', () => {
  const rows = table('FORCEPROVING', forces, series, 1);

  test('has a header, the forces, the means and the fitted line', () => {
    expect(rows[0]).toEqual(['Force', 'Xr', 'Xa', 'b', 'b′', 'fc', 'v']);
    expect(rows.slice(1).map(([force]) => force)).toEqual([50, 75, 100]);
    rows.slice(1).forEach(([, xr], i) => expect(xr).toBeCloseTo(mean[i], 14));
    rows.slice(1).forEach(([force, , xa]) => expect(xa).toBeCloseTo(force / 50, 14));
  });
  test('b is the spread of X1, X3, X5 over their mean', () => expect(rows[1][3]).toBeCloseTo(0.0012 / 1.0001, 14));
  test('b′ is X2 − X1 over the mean of the two', () => expect(rows[1][4]).toBeCloseTo(0.0003 / (1.0001 + 0.00075), 14));
  test('fc is the miss of the polynomial over its value, signed', () => {
    expect(rows[1][5]).toBeCloseTo(e, 14);
    expect(rows[2][5]).toBeCloseTo((-2 * e) / 1.5, 14);
    expect(rows[3][5]).toBeCloseTo(e / 2, 14);
  });
  test('v is the mean of the two differences down − up, blank where nothing was read on the way down', () => {
    expect(rows[1][6]).toBeCloseTo((0.002 / 1.0001 + 0.001 / 0.9995) / 2, 14);
    expect(rows.slice(2).map((row) => row[6])).toEqual([0, '']);
  });
  test('degree 3 is the default', () => {
    const cubic = (force: number) => force / 50 + 1e-6 * (force / 10) ** 3;
    const more = [20, 40, 60, 80, 100];
    const found = table('FORCEPROVING', column(...more), more.map((force) => Array(6).fill(cubic(force))));
    found.slice(1).forEach((row) => expect(Math.abs(row[5])).toBeLessThan(1e-14));
  });
  test('a range that lies on its side gives the same', () => {
    const across = series[0].map((_, i) => series.map((row) => row[i]));
    expect(table('FORCEPROVING', [[50, 75, 100]], across, 1)).toEqual(rows);
  });
});

describe('FORCEUNCERTAINTY by hand (formulas of ISO 376 Annex C, from memory)', () => {
  const zeros = [[0, 0.0001], [0.0001, -0.0002]];
  const all = table('FORCEUNCERTAINTY', forces, series, 1, 0.01, zeros, [[1.9999, 2.0004]], 0.0002, 0.0006, false);
  const X_N = mean[2];
  const expected: Record<string, number> = {
    'w1, half the expanded uncertainty of the force': 0.0001,
    'w2, √(Σ(Xi − Xr)²/6)/Xr': Math.sqrt((2 * 0.0006 ** 2) / 6) / 1.0001,
    'w3, b′/√3': 0.0003 / 1.00085 / Math.sqrt(3),
    'w4, r/(F√6)': 0.01 / 50 / Math.sqrt(6),
    'w5, c/√3': 0.0005 / X_N / Math.sqrt(3),
    'w6, the worst f0': 0.0003 / X_N,
    'w7, K·ΔT/(2√3)': 0.0006 / 2 / Math.sqrt(3),
    'w8, (F_N/F)·√(δr/(n − d − 1))/X_N': (2 * Math.sqrt(6) * e) / X_N,
  };

  test.each(Object.keys(expected).map((name, i) => [name, i + 1] as const))('%s', (name, at) => {
    expect(all[0][at]).toBeCloseTo(expected[name], 14);
  });
  test('wc is the root of the squares, W twice that', () => {
    const combined = Math.sqrt(Object.values(expected).reduce((sum, w) => sum + w * w, 0));
    expect(all[0][9]).toBeCloseTo(combined, 14);
    expect(all[0][10]).toBeCloseTo(2 * combined, 14);
  });
  test('w5 is v/(3√3) without a creep test, and takes the v of the force below where there is none', () => {
    const found = table('FORCEUNCERTAINTY', forces, [series[0], [...increasing[1]], series[2]], 1, null, null, null, null, null, false);
    const v = (0.002 / 1.0001 + 0.001 / 0.9995) / 2;
    found.forEach((row) => expect(row[5]).toBeCloseTo(v / (3 * Math.sqrt(3)), 14));
  });
  test('what is not given is blank and counts as nothing', () => {
    const [row] = table('FORCEUNCERTAINTY', forces, increasing, 1, null, null, null, null, null, false);
    expect([row[1], row[4], row[5], row[6], row[7]]).toEqual(['', '', '', '', '']);
    expect(row[9]).toBeCloseTo(Math.hypot(row[2], row[3], row[8]), 15);
  });
  test('the uncertainty of the force may be one a force', () => {
    const found = table('FORCEUNCERTAINTY', column(0, 50, 75, 100), [Array(6).fill(null), ...increasing], 1, null, null, null, column(null, 0.0002, 0.0004, null), null, false);
    expect(found.map((row) => row[1])).toEqual([0.0001, 0.0002, '']);
  });
});

describe('FORCEUNCERTAINTYFIT', () => {
  test('inverse form finds a0 and a1 of W = 0.0004 + 0.02/F again', () => {
    const points = [10, 20, 50, 100];
    const [row] = table('FORCEUNCERTAINTYFIT', column(...points), column(...points.map((force) => 0.0004 + 0.02 / force)), null, false);
    expect(row[0]).toBe('W = a0 + a1/F');
    expect(row[1]).toBeCloseTo(0.0004, 15);
    expect(row[2]).toBeCloseTo(0.02, 14);
    expect(row.slice(7)).toEqual([10, 100]);
  });
  test('quadratic form finds its three coefficients again', () => {
    const points = [10, 20, 50, 100];
    const [row] = table('FORCEUNCERTAINTYFIT', column(...points), column(...points.map((f) => 0.001 - 1e-5 * f + 5e-8 * f * f)), 'quadratic', false);
    [0.001, -1e-5, 5e-8].forEach((a, i) => expect(row[i + 1]).toBeCloseTo(a, 16));
  });
  test('linear form by hand: W 1, 3, 2 at 1, 2, 3 gives 1 + F/2, short by 1 at force 2', () => {
    const [row] = table('FORCEUNCERTAINTYFIT', column(1, 2, 3), column(1, 3, 2), 'linear', false);
    expect(row.slice(0, 1).concat(row.slice(3, 4))).toEqual(['W = a0 + a1·F', '']);
    [1, 0.5].forEach((a, i) => expect(row[i + 1]).toBeCloseTo(a, 14));
    expect(row[4]).toBeCloseTo(1, 14);
    expect(row[5]).toBe(2);
    expect(row[6]).toBeCloseTo(2, 14);
  });
  test('takes force and W as FORCEUNCERTAINTY spills them', () => {
    const spilled = table('FORCEUNCERTAINTY', forces, series, 1, 0.01, null, null, 0.0002, null, false);
    const [row] = table('FORCEUNCERTAINTYFIT', spilled.map(([force]) => [force]), spilled.map((line) => [line[10]]), null, false);
    spilled.forEach((line) => expect(row[6] + row[2] / line[0]).toBeGreaterThanOrEqual(line[10] - 1e-15));
  });
  test('refuses the header row', () => {
    expect(fault('FORCEUNCERTAINTYFIT', column('Force', 1, 2), column('W', 1, 2))).toMatch(/#VALUE!: forces row 1: found the text "Force"/);
  });
  test('refuses a negative uncertainty, and one force alone', () => {
    expect(fault('FORCEUNCERTAINTYFIT', column(1, 2), column(0.1, -0.1))).toMatch(/#VALUE!: uncertainties row 2: found -0.1; expected 0 or more/);
    expect(fault('FORCEUNCERTAINTYFIT', column(1), column(0.1))).toMatch(/#VALUE!: found 1 different force/);
  });
});

describe('force-proving series are refused when', () => {
  const one = (row: number, at: number, cell: Cell) => series.map((line, i) => (i === row ? line.map((old, j) => (j === at ? cell : old)) : line));
  const cases: [string, unknown[], RegExp][] = [
    ['X2 is missing', [forces, one(1, 1, null), 1], /^#VALUE!: series row 2: found no X2; expected X1, X2, X3 and X5/],
    ['X4′ stands alone', [forces, one(1, 5, null), 1], /^#VALUE!: series row 2: found X4′ alone; expected both/],
    ['a reading is text', [forces, one(0, 2, '1,0001'), 1], /^#VALUE!: series row 1, column 3: found the text "1,0001"/],
    ['a deflection is 0', [forces, one(0, 2, 0), 1], /^#VALUE!: series row 1: found a deflection of 0 \(X3\) at force 50/],
    ['there are four columns', [forces, series.map((line) => line.slice(0, 4)), 1], /^#VALUE!: series: found 3 rows and 4 columns; expected 6 columns \(X1, X2, X3, X4′, X5, X6′\) and 3 rows/],
    ['there are more rows than forces', [column(50, 75), series, 1], /^#VALUE!: series: found 3 rows and 6 columns; expected .* and 2 rows/],
    ['a force stands twice', [column(50, 50, 100), series, 1], /^#VALUE!: forces: found 50 twice \(the second in row 2\)/],
    ['a force is missing', [column(50, null, 100), series, 1], /^#VALUE!: series row 2: found readings without a force/],
    ['directions mix', [column(50, -75, 100), series, 1], /^#VALUE!: forces row 2: found -75, but row 1 holds 50/],
    ['the forces are too few for the degree', [forces, series, 2], /^#VALUE!: found 3 forces with readings; degree 2 needs at least 4/],
    ['the degree is 4', [forces, series, 4], /^#VALUE!: degree: found 4; expected a whole number from 1 to 3/],
  ];
  test.each(cases)('%s', (_, args, message) => expect(fault('FORCEPROVING', ...(args as any[]))).toMatch(message));

  const tests: [string, unknown[], RegExp][] = [
    ['the resolution is negative', [-1], /^#VALUE!: resolution: found -1; expected 0 or more, in force units/],
    ['a zero has no partner', [null, [[0, 0], [0, null]]], /^#VALUE!: zeros row 2, column 2: found nothing; expected both/],
    ['zeros stand in one column', [null, column(0, 0)], /^#VALUE!: zeros: found 2 rows and 1 column; expected two columns/],
    ['creep has one reading', [null, null, [[2]]], /^#VALUE!: creep: found 1 number in 1 cell; expected two/],
    ['the uncertainty of force is negative', [null, null, null, -0.1], /^#VALUE!: forceU: found -0.1; expected 0 or more/],
    ['uncertainties of force are too few', [null, null, null, column(0.1, 0.1)], /^#VALUE!: forceU: found 2 cells; expected one, or one for each of the 3 forces/],
    ['limits are percent figures', [null, null, null, null, Array(4).fill(Array(7).fill(0.05))], /^#VALUE!: limits row 1, column 1: found 0.05; expected a fraction/],
    ['limits have five columns', [null, null, null, null, Array(4).fill(Array(5).fill(0.001))], /^#VALUE!: limits: found 4 rows and 5 columns; expected 4 rows/],
  ];
  test.each(tests)('%s', (_, args, message) => expect(fault('FORCECLASS', forces, series, 1, ...(args as any[]))).toMatch(message));
});
