/** Coverage factors and combined uncertainty against JCGM 100 (table G.2, example G.4.1); divisors against their distributions. */
import { combineUncertainty } from '../../src/metrology/combinedUncertainty';
import { coverageFactor } from '../../src/metrology/coverage';
import { standardUncertainty, type Distribution } from '../../src/metrology/standardUncertainty';
import { expectDigits } from '../digits';
import { gum } from '../published';

const { note, discrepancies, rows } = {
  note: gum.table_G2_note as string,
  discrepancies: gum.table_G2_rounding_discrepancies as [string, string, string, number][],
  rows: Object.entries<Record<string, string> & { exact: number[] }>(gum.table_G2),
};
const PERCENTS = ['68.27', '90', '95', '95.45', '99', '99.73'];
const dofOf = (label: string) => (label === 'inf' ? Infinity : Number(label));

describe('coverage factors', () => {
  test('the table holds 28 rows of six', () => {
    expect(rows.length).toBe(28);
    for (const [, { exact }] of rows) expect(exact.length).toBe(PERCENTS.length);
  });
  test.each(rows)('JCGM 100, table G.2, %p degrees of freedom: k as printed, but for the one misprint that is listed', (label, row) => {
    PERCENTS.forEach((percent, i) => {
      const k = coverageFactor(Number((Number(percent) / 100).toFixed(4)), dofOf(label));
      expect(Math.abs(k - row.exact[i])).toBeLessThan(6e-7);
      const misprint = discrepancies.some(([dof, p]) => dof === label && p === percent);
      const decimals = row[percent].split('.')[1].length;
      if (misprint) expect(Math.abs(k - Number(row[percent]))).toBeLessThan(0.011);
      else expect(k.toFixed(decimals)).toBe(row[percent]);
    });
  });
  test('the misprint is 1.70 for 1.6896 at 35 degrees of freedom, 90 %', () => {
    expect(discrepancies).toEqual([['35', '90', '1.70', 1.6895724577802655]]);
    expect(note).toContain('1.68957');
    expectDigits(coverageFactor(0.9, 35), 1.6895724577802655, 13);
  });
  test('one degree of freedom is tan(π·p/2), two are p·√2/√(1 − p²), to 12 digits (closed forms of Student’s t)', () => {
    for (const p of [0.1, 0.5, 0.9, 0.95, 0.99, 0.9999]) {
      expectDigits(coverageFactor(p, 1), Math.tan((Math.PI * p) / 2), 11);
      expectDigits(coverageFactor(p, 2), (p * Math.SQRT2) / Math.sqrt(1 - p * p), 12);
    }
  });
  test('0.6827, 0.9545 and 0.9973 are exactly 1, 2 and 3 with infinite degrees of freedom', () => {
    expect([0.6827, 0.9545, 0.9973].map((p) => coverageFactor(p, Infinity))).toEqual([1, 2, 3]);
  });
  test('degrees of freedom past counting join the normal distribution without a step', () => {
    for (const p of [0.5, 0.9545, 0.99]) expectDigits(coverageFactor(p, 0.99e12), coverageFactor(p, 1.01e12), 11);
  });
  test.each([0, 1, -0.5, 95.45, NaN])('a probability of %p is refused', (p) => {
    expect(() => coverageFactor(p, 5)).toThrow(`probability: found ${p}; expected a number between 0 and 1`);
  });
});

describe('combined uncertainty', () => {
  const { rel_u_percent, n, published, recomputed } = gum.G4_1_welch_satterthwaite;
  const components = rel_u_percent.map((value: number, i: number) => ({ value, dof: n[i] - 1 }));
  const found = combineUncertainty(components, 0.95);
  test('JCGM 100, example G.4.1: uc, effective degrees of freedom, k and U as printed', () => {
    expect(`${found.combined.toFixed(2)} %`).toBe(published.uc);
    expect(found.dof.toFixed(1)).toBe(published.veff);
    expect(found.factor.toFixed(2)).toBe(published.t95_19);
    expect(`${found.expanded.toFixed(1)} %`).toBe(published.U95);
  });
  test('JCGM 100, example G.4.1 recomputed: uc and dof to 14 digits; k and U there are at 19 whole degrees of freedom', () => {
    expectDigits(found.combined, recomputed.uc, 14);
    expectDigits(found.dof, recomputed.veff, 14);
    expectDigits(coverageFactor(0.95, 19), recomputed.t, 13);
    expectDigits(coverageFactor(0.95, 19) * found.combined, recomputed.U, 13);
    expectDigits(found.expanded, recomputed.U, 5);
  });
  test('one component alone keeps its degrees of freedom', () => {
    const alone = combineUncertainty([{ value: -0.3, dof: 4 }], 0.95);
    expect(alone.combined).toBe(0.3);
    expect(alone.dof).toBe(4);
    expectDigits(alone.expanded, 0.3 * 2.776445105, 9);
  });
  test('two equal components double the degrees of freedom', () => {
    expectDigits(combineUncertainty([{ value: 2, dof: 5 }, { value: 2, dof: 5 }], 0.95).dof, 10, 15);
  });
  test('components near the ends of the range of numbers neither overflow nor vanish', () => {
    for (const unit of [1e300, 1e-300]) {
      const { combined, dof } = combineUncertainty([{ value: 3 * unit, dof: 9 }, { value: 4 * unit, dof: Infinity }], 0.95);
      expectDigits(combined, 5 * unit, 14);
      expectDigits(dof, (625 / 81) * 9, 14);
    }
  });
});

describe('divisors', () => {
  /** Standard deviation of a distribution from its quantiles at evenly spaced probabilities. */
  const spread = (quantile: (p: number) => number) => {
    const steps = 200_000;
    return Math.sqrt(Array.from({ length: steps }, (_, i) => quantile((i + 0.5) / steps) ** 2).reduce((sum, square) => sum + square, 0) / steps);
  };
  test.each<[Distribution, (p: number) => number]>([
    ['rectangular', (p) => 2 * p - 1],
    ['triangular', (p) => (p < 0.5 ? Math.sqrt(2 * p) - 1 : 1 - Math.sqrt(2 - 2 * p))],
    ['ushaped', (p) => Math.sin(Math.PI * (p - 0.5))],
    ['resolution', (p) => p * 7 - Math.round(p * 7)],
  ])('%s: the standard deviation of its own quantiles', (distribution, quantile) => {
    expectDigits(standardUncertainty(1, distribution), spread(quantile), 5);
  });
  test('normal: half of an expanded uncertainty with k = 2', () => {
    expect(standardUncertainty(0.3, 'normal')).toBe(0.15);
  });
  test('a half-width below 0 is refused', () => {
    expect(() => standardUncertainty(-1, 'normal')).toThrow('halfWidth: found -1; expected 0 or more');
  });
});
