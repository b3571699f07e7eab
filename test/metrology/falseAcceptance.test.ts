/** Probability of being out of tolerance, given a measured value, against JCGM 106, clauses 7 and 8. */
import { coverageFactor } from '../../src/metrology/coverage';
import { combineUncertainty } from '../../src/metrology/combinedUncertainty';
import { testRatio } from '../../src/metrology/comparison';
import { falseAcceptance } from '../../src/metrology/falseAcceptance';
import { expectDigits } from '../digits';
import { conformity } from '../published';

test('JCGM 106, 7.3.3, breakdown voltage: conformity 0.92 under an upper limit', () => {
  const { y, u, TU, published_pc, exact } = conformity.ex_zener;
  const conforming = 1 - falseAcceptance(y, { upper: TU }, u);
  expect(conforming.toFixed(2)).toBe(String(published_pc));
  expectDigits(conforming, exact, 12);
});

test('JCGM 106, 7.3.3, bursting strength: conformity 0.99 above a lower limit', () => {
  const { y, u, TL, published_pc, exact } = conformity.ex_container;
  const conforming = 1 - falseAcceptance(y, { lower: TL }, u);
  expect(conforming.toFixed(2)).toBe(String(published_pc));
  expectDigits(conforming, exact, 12);
});

test('JCGM 106, 7.4, motor oil between 12.5 and 16.3: conformity 0.66 at 13.6 with u = 1.8', () => {
  expect((1 - falseAcceptance(13.6, { lower: 12.5, upper: 16.3 }, 1.8)).toFixed(2)).toBe('0.66');
});

test.each(conformity.table1 as [number, number][])('JCGM 106, table 1: conformity %p lies %p standard uncertainties inside a single limit', (p, z) => {
  const factor = coverageFactor(2 * p - 1, Infinity);
  expect(factor.toFixed(2)).toBe(z.toFixed(2));
  expectDigits(falseAcceptance(-factor, { upper: 0 }, 1), 1 - p, 12);
  expectDigits(falseAcceptance(factor, { lower: 0 }, 1), 1 - p, 12);
});

test('JCGM 106, clause 8, speed trap: at 107 km/h the limit of 100 is exceeded with probability 0.999', () => {
  const { v0, rel_u, p, published, exact } = conformity.ex_speed;
  expect(`${exact.toFixed(0)} km/h`).toBe(published);
  expectDigits(falseAcceptance(exact, { upper: v0 }, rel_u * exact), p, 10);
});

test('JCGM 106, clause 8, concentration from ten readings: guard band 0.37, acceptance limit 2.37', () => {
  const { T, s, nu, published_guard, published_A, exact_t, exact_g } = conformity.ex_nandrolone;
  const { factor, expanded } = combineUncertainty([{ value: s, dof: nu }], 0.9);
  expectDigits(factor, exact_t, 13);
  expectDigits(expanded, exact_g, 13);
  expect(expanded.toFixed(2)).toBe(String(published_guard));
  expect((T + expanded).toFixed(2)).toBe(String(published_A));
});

test('JCGM 106, 7.7: capability index Cm = E/U gives conformity Φ[4·Cm·(1 − ỹ)] − Φ[−4·Cm·ỹ]; at Cm = 1 it is 0.95 only from ỹ = 0.45 to 0.55', () => {
  expect(conformity.capability_index).toContain('at Cm=1 p_c>=0.95 only for 0.45<=ytilde<=0.55');
  expect(conformity.capability_index).toContain('U<=Emax/3 <=> Cm>=3');
  const conforming = (y: number, index: number) => 1 - falseAcceptance(y, { lower: 0, upper: 1 }, 1 / (4 * index));
  for (const y of [0.45, 0.5, 0.55]) expect(conforming(y, 1)).toBeGreaterThanOrEqual(0.95 - 0.0005);
  for (const y of [0.44, 0.56]) expect(conforming(y, 1)).toBeLessThan(0.95);
  expect(testRatio(0.5, 0.5)).toBe(1);
  expect(testRatio(3, 1)).toBe(3);
});

test.each(Object.entries<number>(conformity.specific_risk_at_acceptance_limit))('at an acceptance limit with %s the risk is %p (recomputed)', (label, risk) => {
  const factor = Number(/w=([\d.]+)U/.exec(label)?.[1]);
  expectDigits(falseAcceptance(10 - factor, { upper: 10 }, 0.5), risk, 10);
});

test('JCGM 106, 8.3: a guard band w = U = 2u leaves a risk of 2.3 % at worst', () => {
  expect(conformity.guard_band).toContain('2.3 %');
  expect((100 * falseAcceptance(10 - 1, { upper: 10 }, 0.5)).toFixed(1)).toBe('2.3');
});

test('a value far inside keeps the digits of its small risk: Φ(−10) = 7.619853024160527e-24 (tables)', () => {
  expectDigits(falseAcceptance(0, { upper: 10 }, 1), 7.619853024160527e-24, 12);
  expectDigits(falseAcceptance(0, { lower: -10, upper: 10 }, 1), 2 * 7.619853024160527e-24, 12);
});

test('no limit, crossed limits and an uncertainty of 0 are refused, each by name', () => {
  expect(() => falseAcceptance(1, {}, 1)).toThrow('lower, upper: found nothing in both; expected at least one limit');
  expect(() => falseAcceptance(1, { lower: 2, upper: 2 }, 1)).toThrow('lower: found 2, with upper 2; expected a lower limit below the upper one');
  expect(() => falseAcceptance(1, { upper: 2 }, 0)).toThrow('u: found 0; expected a standard uncertainty above 0');
});
