/** Classes of force-proving instruments. The limits are those of ISO 376:2011 as written down from memory in test/published. */
import type { Argument } from '../../src/functions/call';
import { iso376 } from '../published';
import { column, table } from './call';

const FORCES = [50, 75, 100];
/** Series that repeat F/50 exactly, times factors for X1, X2, X3, X4′, X5, X6′. */
const series = (factors = [1, 1, 1, 1, 1, 1], forces = FORCES) => forces.map((force) => factors.map((factor) => (force / 50) * factor));
const [X_N, F_1] = [2, 50];

/** A call that is perfect but for one parameter, which takes the value asked for (a fraction) at force 50 at least. */
const troubled: Record<string, (value: number) => Argument[]> = {
  b: (value) => [column(...FORCES), series([1 - value / 2, 1 - value / 2, 1, 1, 1 + value / 2, 1 + value / 2]), 1],
  b_prime: (value) => [column(...FORCES), series([1, (2 + value) / (2 - value), 1, 1, 1, 1]), 1],
  fc: (value) => {
    // Misses e, −2e, e of the line 1, 1.5, 2: fc is largest at 75, where it is −2e/1.5.
    const miss = value * 0.75;
    return [column(...FORCES), [1 + miss, 1.5 - 2 * miss, 2 + miss].map((mean) => Array(6).fill(mean)), 1];
  },
  f0: (value) => [column(...FORCES), series(), 1, null, [[0, 0], [0.1, 0.1 - value * X_N]]],
  v: (value) => [column(...FORCES), series([1, 1, 1, 1 + value, 1, 1 - value]), 1],
  c: (value) => [column(...FORCES), series([1, 1, 1, 1.1, 1, 1.1]), 1, null, null, [[X_N, X_N * (1 + value)]]],
  U_force: (value) => [column(...FORCES), series(), 1, null, null, null, value],
  resolution: (value) => [column(...FORCES), series(), 1, value * F_1],
};

const classes = ['00', '0.5', '1', '2'];
const limits = classes.flatMap((name) => Object.entries<number>(iso376.classes[name]).map(([parameter, percent]) => [parameter, name, percent / 100] as const));
const resolutions = [...(iso376.formulas.resolution as string).matchAll(/(\d+)(?: r)? \(([\d.]+)\)/g)]
  .map(([, multiple, name]) => ['resolution', name, 1 / Number(multiple)] as const);
/** The worst class found at any force. */
const classOf = (args: Argument[]) => {
  const found = table('FORCECLASS', ...args, ...Array(8 - args.length).fill(null), false).map(([, name]) => name as string);
  return [...classes, 'none'].findLast((name) => found.includes(name));
};

describe('limits of ISO 376 (from memory)', () => {
  test('28 limits of four classes, and four least numbers of resolutions, are checked', () => {
    expect([limits.length, resolutions.length]).toEqual([28, 4]);
  });
  test.each([...limits, ...resolutions])('%s of class %s: met at %d, not at a thousandth more', (parameter, name, limit) => {
    expect(classOf(troubled[parameter](limit))).toBe(name);
    expect(classOf(troubled[parameter](limit * 1.001))).toBe([...classes, 'none'][classes.indexOf(name) + 1]);
  });
});

describe('FORCECLASS', () => {
  const names: Record<string, string> = { b: 'b', b_prime: 'b′', fc: 'fc', f0: 'f0', v: 'v', c: 'c', U_force: 'U of force', resolution: 'r/F' };
  test.each(Object.keys(troubled))('names %s as what keeps an instrument from class 00, with its value and limit', (parameter) => {
    const limit = parameter === 'resolution' ? 1 / 4000 : iso376.classes['00'][parameter] / 100;
    const args = troubled[parameter](limit * 1.5);
    const [row] = table('FORCECLASS', ...args, ...Array(8 - args.length).fill(null), false).sort((one, other) => Math.abs(other[3]) - Math.abs(one[3]));
    expect(row[2]).toBe(names[parameter]);
    expect(Math.abs(row[3])).toBeCloseTo(limit * 1.5, 12);
    expect(row[4]).toBeCloseTo(limit, 15);
  });
  test('a creep test stands in place of v: decreasing series 10 % off are then not judged', () => {
    expect(classOf(troubled.c(0))).toBe('00');
    expect(classOf(troubled.v(0.1))).toBe('none');
  });
  test('says what it could not judge', () => {
    const bare = series().map(([x1, x2, x3, , x5]) => [x1, x2, x3, null, x5, null]);
    expect(table('FORCECLASS', column(...FORCES), bare, 1)[1]).toEqual([50, '00', '', '', '', 'v or c, f0, U of force, r/F']);
    const complete = table('FORCECLASS', column(...FORCES), series(), 1, 0.001, [[0, 0]], null, 0.0001);
    expect(complete.slice(1).map((row) => row[5])).toEqual(['', '', '']);
  });
  test('v may be missing at the greatest force, not elsewhere', () => {
    const without = (row: number) => series().map((line, i) => line.map((x, j) => (i === row && (j === 3 || j === 5) ? null : x)));
    const notJudged = (row: number) => table('FORCECLASS', column(...FORCES), without(row), 1, 0, [[0, 0]], null, 0, null, false).map((line) => line[5]);
    expect(notJudged(2)).toEqual(['', '', '']);
    expect(notJudged(1)).toEqual(['', 'v', '']);
  });
  test('a force below 2 % of the greatest has no class (from memory)', () => {
    const forces = [1.99, 2, 50, 100];
    const found = table('FORCECLASS', column(...forces), series(undefined, forces), 1, null, null, null, null, null, false);
    expect(found.map(([, name]) => name)).toEqual(['none', '00', '00', '00']);
    expect(found[0].slice(2, 5)).toEqual(['F/F_N', 0.0199, 0.02]);
  });
  test('limits typed on the sheet are used; a blank one is not judged', () => {
    const own = (b: number | null) => [b, 1, 2, 3].map((first) => [typeof first === 'number' && first < 1 ? first : null, null, null, null, null, null, null]);
    const args = troubled.b(0.003);
    expect(classOf([...args, null, null, null, null, own(0.004)])).toBe('00');
    expect(classOf([...args, null, null, null, null, own(null)])).toBe('00');
    expect(classOf([...args, null, null, null, null, own(0.002)])).toBe('0.5');
  });
  test('an eighth column of limits holds r/F; without it r/F keeps its own', () => {
    const wide = Array(4).fill([null, null, null, null, null, null, null, 0.01]);
    const args = [column(...FORCES), series(), 1, 0.5, null, null, null] as Argument[];
    expect(classOf([...args, wide])).toBe('00');
    expect(classOf([...args, wide.map((row) => row.slice(0, 7))])).toBe('none');
  });
});

describe('FORCECLASSRANGE', () => {
  const forces = [10, 20, 40, 50, 60, 100];
  /** Spread b of 0.15 % (class 1) at one force, none elsewhere. */
  const spreadAt = (at: number) => series(undefined, forces).map((row, i) =>
    (forces[i] === at ? [row[0] * 0.99925, row[0] * 0.99925, row[2], row[3], row[4] * 1.00075, row[5] * 1.00075] : row));
  const ranges = (at: number) => table('FORCECLASSRANGE', column(...forces), spreadAt(at), 1, null, null, null, null, null, false);

  test('has a header and a row a class', () => {
    const found = table('FORCECLASSRANGE', column(...forces), series(undefined, forces), 1);
    expect(found[0]).toEqual(['Class', 'From', 'To', 'Limited by', 'At force', 'Found', 'Limit', 'Not judged']);
    expect(found.slice(1).map(([name]) => name)).toEqual(classes);
    expect(found[1]).toEqual(['00', 10, 100, 'lowest force applied', 10, '', '', 'f0, U of force, r/F']);
  });
  test('starts above a force that breaks a limit, and names it', () => {
    const [best, second, third] = ranges(20);
    expect(best.slice(0, 5)).toEqual(['00', 40, 100, 'b', 20]);
    expect(best[5]).toBeCloseTo(0.0015, 12);
    expect(best[6]).toBeCloseTo(0.0005, 15);
    expect(second.slice(0, 5)).toEqual(['0.5', 40, 100, 'b', 20]);
    expect(third.slice(0, 5)).toEqual(['1', 10, 100, 'lowest force applied', 10]);
  });
  test('a class that holds from 50 % is met, from 60 % is not (from memory)', () => {
    expect(ranges(40)[0].slice(0, 5)).toEqual(['00', 50, 100, 'b', 40]);
    expect(ranges(50)[0].slice(0, 5)).toEqual(['00', 'not met', '', 'b', 50]);
    expect(ranges(50)[2].slice(0, 3)).toEqual(['1', 10, 100]);
  });
  test('a class broken at the greatest force is not met', () => {
    expect(ranges(100)[0].slice(0, 5)).toEqual(['00', 'not met', '', 'b', 100]);
  });
  test('forces that start above 50 % of the greatest give no class', () => {
    const found = table('FORCECLASSRANGE', column(60, 80, 100), series(undefined, [60, 80, 100]), 1, null, null, null, null, null, false);
    expect(found.map((row) => row.slice(1, 5))).toEqual(Array(4).fill(['not met', '', 'lowest force applied', 60]));
  });
  test('4000, 2000, 1000, 500 resolutions of 0.02 start the classes at 80, 40, 20, 10 (from memory); 80 % is too high', () => {
    const steps = [10, 20, 40, 60, 80, 100];
    const found = table('FORCECLASSRANGE', column(...steps), series(undefined, steps), 1, 0.02, null, null, null, null, false);
    expect(found.map(([, from]) => from)).toEqual(['not met', 40, 20, 10]);
    expect(found[1].slice(3, 7)).toEqual(['r/F', 20, 0.001, 0.0005]);
  });
});
