import fQuantile from '@stdlib/stats-base-dists-f-quantile';
import { runAverages } from './calibrationData';
import { badInput } from './errors';
import { fitPolynomial, GREATEST_DEGREE } from './polynomialFit';
import type { Run } from './run';

/** One line of the degree test. */
export interface DegreeStep {
  readonly degree: number;
  /** Residual standard deviation of the run averages about the fit of this degree, output units. */
  readonly residualSd: number;
  /** s(m−1)/s(m); undefined for degree 1, and where both are rounding only. */
  readonly ratio: number | undefined;
  /** C(n1, m); undefined for degree 1. */
  readonly threshold: number | undefined;
  readonly significant: boolean;
}

/**
 * Threshold of the degree test: C(n1, m) = √(1 + (F₀.₉₇₅(1, n1 − m − 1) − 1)/(n1 − m)).
 * @param n1 number of different forces
 * @param degree m, at most n1 − 2
 * Source: ASTM E74; recomputed from the F distribution.
 */
export function degreeThreshold(n1: number, degree: number): number {
  const f = fQuantile(0.975, 1, n1 - degree - 1);
  return Math.sqrt(1 + (f - 1) / (n1 - degree));
}

/**
 * The degree test on run averages, degree 1 up to `maxDegree` (5, or what the number of forces bears, if left out).
 * Degree m is significant if s(m−1)/s(m) > C(n1, m). Where degree m−1 leaves nothing but rounding, m adds nothing.
 * Source: ASTM E74.
 */
export function degreeSteps(runs: readonly Run[], maxDegree?: number): DegreeStep[] {
  const averages = runAverages(runs);
  const forces = averages.map((point) => point.force);
  const readings = averages.map((point) => point.reading);
  const bearable = forces.length - 2;
  if (bearable < 1) throw badInput(`found ${forces.length} different non-zero forces; the degree test needs at least 3`);
  if (maxDegree !== undefined && maxDegree > bearable) {
    throw badInput(`maxDegree: found ${maxDegree}; ${forces.length} different forces bear degree ${bearable} at most`);
  }
  const rounding = 8 * Number.EPSILON * readings.reduce((most, reading) => Math.max(most, Math.abs(reading)), 0);
  const steps: DegreeStep[] = [];
  for (let degree = 1; degree <= (maxDegree ?? Math.min(GREATEST_DEGREE, bearable)); degree += 1) {
    const fit = fitPolynomial(forces, readings, degree);
    steps.push(stepOf(degree, fit.residualSd as number, steps.at(-1)?.residualSd, forces.length, rounding));
  }
  return steps;
}

function stepOf(degree: number, residualSd: number, before: number | undefined, n1: number, rounding: number): DegreeStep {
  if (before === undefined) return { degree, residualSd, ratio: undefined, threshold: undefined, significant: false };
  const threshold = degreeThreshold(n1, degree);
  const spent = before <= rounding;
  return {
    degree, residualSd, threshold,
    ratio: spent || residualSd === 0 ? undefined : before / residualSd,
    significant: !spent && before > threshold * residualSd,
  };
}

/** Degree of best fit: the highest significant degree, else 1. Source: ASTM E74. */
export function bestDegree(steps: readonly DegreeStep[]): number {
  return steps.findLast((step) => step.significant)?.degree ?? 1;
}
