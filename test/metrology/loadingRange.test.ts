import { loadingRange, lowerLoadLimit } from '../../src/metrology/loadingRange';
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import type { Point } from '../../src/metrology/run';

describe('lower load limit', () => {
  test('LLF 16 N gives 32 000 N for class AA and 6 400 N for class A (example of ASTM E74, from memory)', () => {
    expect(lowerLoadLimit('AA', 16, 0, 0)).toEqual({ limit: 32_000, rule: 'lower limit factor' });
    expect(lowerLoadLimit('A', 16, 0, 0)).toEqual({ limit: 6_400, rule: 'lower limit factor' });
  });

  test('a range never starts below the lowest force applied', () => {
    expect(lowerLoadLimit('A', 16, 0, 10_000)).toEqual({ limit: 10_000, rule: 'lowest force applied' });
  });

  test('a coarse resolution sets the limit: 400 × 20 N', () => {
    expect(lowerLoadLimit('A', 20, 20, 1_000)).toEqual({ limit: 8_000, rule: 'resolution' });
  });

  test('a class that is not met says its limit and the greatest force', () => {
    const points: Point[] = [10, 20, 30, 40].map((force, i) => ({ row: i + 1, place: `row ${i + 1}`, order: i + 1, force, reading: [1, 2.1, 2.9, 4][i] }));
    const fit = fitPolynomial([10, 20, 30, 40], [1, 2.1, 2.9, 4], 1);
    expect(() => loadingRange(points, fit, 'AA')).toThrow(/class AA is not met: its lower load limit, set by the lower limit factor, is \d+.*above the greatest force applied, 40/);
  });
});
