/**
 * The expanded uncertainty of JCGM 100 held against draws (JCGM 101): where the two agree, and by how much and why they differ
 * where they must. Seeded, so every figure repeats.
 */
import { combineUncertainty } from '../src/metrology/combinedUncertainty';
import { number, table } from './functions/call';
import { componentsOf, simulate, type BudgetLine } from './monteCarlo';
import { randomDraws } from './randomDraws';

const line = (distribution: BudgetLine['distribution'], standardUncertainty: number, dof?: number): BudgetLine =>
  ({ name: distribution, distribution, standardUncertainty, dof });

/** U of UNCERTAINTY as the cell gives it. */
function expandedOf(budget: readonly BudgetLine[]): number {
  const components = componentsOf(budget);
  const dofs = components.map(({ dof }) => [Number.isFinite(dof) ? dof : null]);
  return table('UNCERTAINTY', components.map(({ value }) => [value]), dofs, null, false)[0][3];
}

/** U over the half-width of the drawn 95.45 % interval. */
const ratioOf = (budget: readonly BudgetLine[]) => expandedOf(budget) / simulate(budget).halfWidth;

describe('U agrees with the 95.45 % interval of a million draws within 5 % where no component dominates', () => {
  const bench: BudgetLine[] = [
    { name: 'weights, from their certificate', distribution: 'normal', halfWidth: 0.02 },
    { name: 'indicator, limit of error', distribution: 'rectangular', halfWidth: 0.02 },
    { name: 'alignment', distribution: 'triangular', halfWidth: 0.03 },
    { name: 'room temperature, controlled', distribution: 'ushaped', halfWidth: 2, sensitivity: -0.006 },
    { name: 'resolution', distribution: 'resolution', halfWidth: 0.02 },
    { name: 'repeatability of ten readings', distribution: 'normal', standardUncertainty: 0.01, dof: 9 },
  ];
  test.each<[string, BudgetLine[]]>([
    ['six components of every kind, one with a sensitivity', bench],
    ['two normal ones', [line('normal', 3), line('normal', 4)]],
    ['three rectangular ones', [line('rectangular', 1), line('rectangular', 1), line('rectangular', 1)]],
    ['two rectangular ones', [line('rectangular', 1), line('rectangular', 1)]],
    ['three U-shaped ones', [line('ushaped', 1), line('ushaped', 1), line('ushaped', 1)]],
    ['a U-shaped and two normal ones', [line('ushaped', 1), line('normal', 1), line('normal', 1)]],
    ['ten readings and a rectangular one', [line('normal', 1, 9), line('rectangular', 1)]],
    ['ten readings and a normal one', [line('normal', 1, 9), line('normal', 1)]],
  ])('%s', (_, budget) => {
    expect(Math.abs(ratioOf(budget) - 1)).toBeLessThan(0.05);
  });
  test('the bench budget within 2 %, and ± U holds 95.45 % of the draws within 0.5 %', () => {
    const simulation = simulate(bench);
    expect(Math.abs(expandedOf(bench) / simulation.halfWidth - 1)).toBeLessThan(0.02);
    expect(Math.abs(simulation.coverage(expandedOf(bench)) - 0.9545)).toBeLessThan(0.005);
  });
});

describe('where one component dominates, U differs by what its shape demands', () => {
  test('rectangular alone: U is 2/(0.9545·√3) = 1.21 times the interval, and reaches past every possible value', () => {
    const budget = [line('rectangular', 1)];
    expect(Math.abs(ratioOf(budget) - 2 / (0.9545 * Math.sqrt(3)))).toBeLessThan(0.002);
    expect(simulate(budget).coverage(expandedOf(budget))).toBe(1);
  });
  test('rectangular with a normal one a fifth of it: U is still 15 to 21 % too long, on the safe side', () => {
    const ratio = ratioOf([line('rectangular', 1), line('normal', 0.2)]);
    expect(ratio).toBeGreaterThan(1.15);
    expect(ratio).toBeLessThan(1.21);
  });
  test('U-shaped alone: U is 2/(√2·sin(0.9545·π/2)) = 1.42 times the interval', () => {
    expect(Math.abs(ratioOf([line('ushaped', 1)]) - Math.SQRT2 / Math.sin((0.9545 * Math.PI) / 2))).toBeLessThan(0.002);
  });
  test('triangular alone: U is 2/(√6·(1 − √0.0455)) = 1.04 times the interval', () => {
    expect(Math.abs(ratioOf([line('triangular', 1)]) - 2 / (Math.sqrt(6) * (1 - Math.sqrt(0.0455))))).toBeLessThan(0.002);
  });
  test.each([2, 3, 9])('Student’s t with %p degrees of freedom alone: U is the interval, since k comes from the same t', (dof) => {
    expect(Math.abs(ratioOf([line('normal', 1, dof)]) - 1)).toBeLessThan(0.01);
  });
});

describe('few readings beside another component', () => {
  const budget = [line('normal', 1, 3), line('rectangular', 1)];
  test('four readings (t with 3 degrees of freedom) and a rectangular one of the same size: U is 14 to 17 % short of the draws, which add the whole tails of t', () => {
    const ratio = ratioOf(budget);
    expect(ratio).toBeGreaterThan(0.83);
    expect(ratio).toBeLessThan(0.86);
  });
  test('in repeated calibrations with four readings each, ± U holds the true value 95.45 % of the time within 1.5 %: what Welch–Satterthwaite promises', () => {
    const random = randomDraws(3);
    const trials = 20_000;
    let held = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      const readings = Array.from({ length: 4 }, () => 2 * random.normal());
      const mean = readings.reduce((sum, reading) => sum + reading, 0) / 4;
      const standard = Math.sqrt(readings.reduce((sum, reading) => sum + (reading - mean) ** 2, 0) / 3 / 4);
      const other = random.normal();
      const { expanded } = combineUncertainty([{ value: standard, dof: 3 }, { value: 1, dof: Infinity }], 0.9545);
      if (Math.abs(mean + other) <= expanded) held += 1;
    }
    expect(Math.abs(held / trials - 0.9545)).toBeLessThan(0.015);
  });
});

describe('the draws themselves', () => {
  test.each(['normal', 'rectangular', 'triangular', 'ushaped', 'resolution'] as const)(
    '%s: the standard deviation of a million draws is its standard uncertainty within 0.3 %', (distribution) => {
      const { standardDeviation } = simulate([{ name: 'x', distribution, halfWidth: 3, sensitivity: -2 }]);
      expect(Math.abs(standardDeviation / (2 * number('STANDARDU', 3, distribution)) - 1)).toBeLessThan(0.003);
    });
  test.each([
    ['normal', undefined, 0.95, 1.959964], ['normal', 2, 0.95, 4.302653], ['normal', 5, 0.95, 2.570582],
    ['rectangular', undefined, 0.5, Math.sqrt(3) / 2], ['ushaped', undefined, 0.5, 1],
    ['triangular', undefined, 0.75, Math.sqrt(6) / 2],
  ] as const)('%s (dof %p): the middle %p of the draws ends at ± %p (tables; hand)', (distribution, dof, probability, end) => {
    const { lower, upper } = simulate([line(distribution, 1, dof)], { probability });
    expect(Math.abs(upper / end - 1)).toBeLessThan(0.015);
    expect(Math.abs(-lower / end - 1)).toBeLessThan(0.015);
  });
  test('the same seed gives the same draws, another seed others', () => {
    const budget = [line('normal', 1), line('ushaped', 1)];
    const [first, again, other] = [1, 1, 2].map((seed) => simulate(budget, { draws: 1000, seed }).upper);
    expect(again).toBe(first);
    expect(other).not.toBe(first);
  });
  test('a line with both a half-width and a standard uncertainty, or neither, is refused by its name', () => {
    expect(() => simulate([{ name: 'weights', distribution: 'normal' }])).toThrow('weights: expected either a half-width or a standard uncertainty');
    expect(() => simulate([{ name: 'weights', distribution: 'normal', halfWidth: 1, standardUncertainty: 1 }])).toThrow('weights');
    expect(() => simulate([line('rectangular', 1, 4)], { draws: 10 })).toThrow('rectangular: degrees of freedom');
  });
});
