/** Drift lines: NIST StRD Norris as a history, a band worked out by hand, and properties of the date found. */
import fc from 'fast-check';
import { dayOfLimit, DAYS_PER_YEAR, drift } from '../../src/metrology/drift';
import { expectDigits } from '../digits';
import { strdSet } from '../published';

test('slope, standard error and residual s of NIST StRD Norris to 11 digits, its x taken as days', () => {
  const { x, y, coefficients, standardErrors, residualSd } = strdSet('Norris');
  const line = drift(x, y);
  expectDigits(line.perYear / DAYS_PER_YEAR, coefficients[1], 11);
  expectDigits(line.standardError / DAYS_PER_YEAR, standardErrors[1], 11);
  expectDigits(line.residualSd, residualSd, 11);
  expectDigits(line.valueAt(0), coefficients[0], 11);
});

test('day numbers of today cost no digits: Norris moved to day 45 000', () => {
  const { x, y, coefficients, standardErrors } = strdSet('Norris');
  const line = drift(x.map((day) => day + 45_000), y);
  expectDigits(line.perYear / DAYS_PER_YEAR, coefficients[1], 11);
  expectDigits(line.standardError / DAYS_PER_YEAR, standardErrors[1], 11);
});

test('prediction band by hand: values 0, 1, 3 on days 0, 1, 2', () => {
  // Slope 3/2, mean 4/3, s² = 1/6 with 1 dof, Sxx = 2; t(0.975, 1) = 12.7062047362 (Student table).
  const line = drift([0, 1, 2], [0, 1, 3]);
  expect(line.perYear / DAYS_PER_YEAR).toBeCloseTo(1.5, 12);
  expect(line.standardError / DAYS_PER_YEAR).toBeCloseTo(Math.sqrt(1 / 12), 12);
  expect(line.valueAt(3)).toBeCloseTo(4 / 3 + 3, 12);
  expect(line.bandAt(3, 0.95)).toBeCloseTo(12.7062047362 * Math.sqrt((1 / 6) * (1 + 1 / 3 + 4 / 2)), 8);
});

describe('date at which the band meets a limit', () => {
  const history = fc.array(fc.tuple(fc.integer({ min: 1, max: 900 }), fc.integer({ min: -50, max: 50 })), { minLength: 3, maxLength: 10 })
    .map((steps) => {
      const days = steps.map(((day) => ([gap]: [number, number]) => (day += gap))(40_000));
      return { days, values: steps.map(([, noise]) => 2 + noise * 1e-5) };
    });
  const until = 2_958_465;

  test('the edge of the band is on the limit then, and inside on every day sampled before', () => {
    let met = 0;
    fc.assert(fc.property(history, fc.constantFrom<'upper' | 'lower'>('upper', 'lower'), ({ days, values }, side) => {
      const line = drift(days, values);
      const sign = side === 'upper' ? 1 : -1;
      const limit = 2 + sign * 0.01;
      const from = days[days.length - 1];
      const edge = (day: number) => line.valueAt(day) + sign * line.bandAt(day, 0.95);
      const day = dayOfLimit(line, limit, side, from, until, 0.95);
      if (day === 'past') return expect(sign * (edge(from) - limit)).toBeGreaterThanOrEqual(0);
      if (day === 'never') return expect(sign * (edge(until) - limit)).toBeLessThan(0);
      met += 1;
      expect(edge(day)).toBeCloseTo(limit, 10);
      for (let i = 0; i < 50; i += 1) expect(sign * (edge(from + ((day - from) * i) / 50) - limit)).toBeLessThan(0);
    }));
    expect(met).toBeGreaterThan(20);
  });
  test('both sides mirror each other', () => {
    fc.assert(fc.property(history, ({ days, values }) => {
      const upper = dayOfLimit(drift(days, values), 2.01, 'upper', days[days.length - 1], until, 0.9);
      const lower = dayOfLimit(drift(days, values.map((value) => -value)), -2.01, 'lower', days[days.length - 1], until, 0.9);
      if (typeof upper === 'number') expect(lower as number).toBeCloseTo(upper, 3);
      else expect(lower).toBe(upper);
    }));
  });
});

test('two values have no standard error', () => {
  expect(() => drift([1, 2], [1, 2])).toThrow(/needs at least 3/);
});
