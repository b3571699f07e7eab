import { bestDegree, degreeSteps, degreeThreshold } from '../../src/metrology/degree';
import type { Run } from '../../src/metrology/run';
import { expectDigits } from '../digits';
import { degreeThresholds } from '../published';

/** A run without zero rows: forces 1, 2, … with the readings given. */
function runOf(readings: readonly number[]): Run {
  return readings.map((reading, i) => ({ row: i + 1, place: `row ${i + 1}`, order: i + 1, force: i + 1, reading }));
}

describe('degree test', () => {
  test('thresholds C(n1, m) for n1 10 to 30, m 2 to 5, to 10 digits (recomputed from the F distribution)', () => {
    for (const [n1, byDegree] of Object.entries(degreeThresholds)) {
      for (const [degree, c] of Object.entries(byDegree)) {
        expectDigits(degreeThreshold(Number(n1), Number(degree)), c, 10, `C(${n1}, ${degree})`);
      }
    }
  });

  test('C(10, 2) 1.373, C(10, 3) 1.455, C(20, 2) 1.131 as ASTM E74 prints them (from memory)', () => {
    expect(degreeThreshold(10, 2).toFixed(3)).toBe('1.373');
    expect(degreeThreshold(10, 3).toFixed(3)).toBe('1.455');
    expect(degreeThreshold(20, 2).toFixed(3)).toBe('1.131');
  });

  test('an exact quadratic needs degree 2, however many degrees are tried: rounding is no significance', () => {
    const run = runOf(Array.from({ length: 12 }, (_, i) => 0.3 + 1.1 * (i + 1) + 0.7 * (i + 1) ** 2));
    expect(bestDegree(degreeSteps([run]))).toBe(2);
  });

  test('an exact straight line needs degree 1', () => {
    expect(bestDegree(degreeSteps([runOf([2, 4, 6, 8, 10, 12, 14, 16])]))).toBe(1);
  });

  test('the first significant degree from above wins, even if one below it is not significant', () => {
    const cubic = Array.from({ length: 15 }, (_, i) => i + 1 + ((i - 7) ** 3 - 34 * (i - 7)) / 100);
    const noise = [3, -2, 1, -3, 2, 2, -1, -3, 3, -1, 2, -2, 1, -1, 0].map((v) => v / 1000);
    const steps = degreeSteps([runOf(cubic.map((v, i) => v + noise[i]))]);
    expect(steps[1].significant).toBe(false);
    expect(bestDegree(steps)).toBe(3);
  });

  test('five different forces bear degree 3 at most, and asking for more says so', () => {
    expect(degreeSteps([runOf([1, 2, 3, 4, 5.1])]).length).toBe(3);
    expect(() => degreeSteps([runOf([1, 2, 3, 4, 5.1])], 4)).toThrow('maxDegree: found 4; 5 different forces bear degree 3 at most');
  });
});
