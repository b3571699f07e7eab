import { badInput, noAnswer } from './errors';
import type { PolynomialFit } from './polynomialFit';
import type { Point } from './run';

/** Lower limit factors that a class allows: 2000 (0.05 % of force) for AA, 400 (0.25 %) for A. Source: ASTM E74 (from memory). */
export const CLASS_MULTIPLES = { AA: 2000, A: 400 } as const;
export type LoadingClass = keyof typeof CLASS_MULTIPLES;

/** What set the lower load limit. */
export type LimitingRule = 'lower limit factor' | 'resolution' | 'lowest force applied';

/**
 * Lower limit factor, in force units: LLF = 2.4·s, times the mean of force/deflection over the data, not below the resolution.
 * @param points net readings under load, all runs
 * @param fit output as a polynomial of force, fitted to those points
 * @param resolution of the transducer with its indicator, force units
 * Source: ASTM E74 (from memory). Older editions call 2.4·s the uncertainty; it is one component of it only.
 */
export function lowerLimitFactor(points: readonly Point[], fit: PolynomialFit, resolution = 0): number {
  if (fit.residualSd === undefined) {
    throw badInput(`found ${fit.n} readings for ${fit.n} coefficients; the lower limit factor needs at least one reading more`);
  }
  const ratio = points.reduce((sum, point) => sum + forcePerDeflection(point), 0) / points.length;
  return Math.max(2.4 * fit.residualSd * Math.abs(ratio), resolution);
}

function forcePerDeflection({ place, force, reading }: Point): number {
  if (reading === 0) throw badInput(`readings ${place}: found a net reading of 0 at force ${force}; expected a deflection`);
  return force / reading;
}

/**
 * Lower load limit of a class: the greatest of its multiple of the lower limit factor, the same multiple of the resolution,
 * and the lowest non-zero force applied; all in force units. Source: ASTM E74 (from memory).
 */
export function lowerLoadLimit(
  loadingClass: LoadingClass, factor: number, resolution: number, lowest: number,
): { limit: number; rule: LimitingRule } {
  const multiple = CLASS_MULTIPLES[loadingClass];
  const byResolution = multiple * resolution;
  const byFactor = multiple * factor;
  const limit = Math.max(byFactor, byResolution, lowest);
  if (limit === lowest) return { limit, rule: 'lowest force applied' };
  return { limit, rule: limit === byResolution ? 'resolution' : 'lower limit factor' };
}

/** The range of forces over which a class holds. */
export interface LoadingRange {
  readonly from: number;
  readonly to: number;
  readonly rule: LimitingRule;
}

/**
 * Loading range of a class: from its lower load limit to the greatest force applied.
 * @throws MetrologyError (no answer) if the class is not met at any force applied
 */
export function loadingRange(
  points: readonly Point[], fit: PolynomialFit, loadingClass: LoadingClass, resolution = 0,
): LoadingRange {
  const forces = points.map((point) => point.force);
  const greatest = forces.reduce((most, force) => Math.max(most, force));
  const lowest = forces.reduce((least, force) => Math.min(least, force));
  const { limit, rule } = lowerLoadLimit(loadingClass, lowerLimitFactor(points, fit, resolution), resolution, lowest);
  if (limit > greatest) {
    throw noAnswer(
      `class ${loadingClass} is not met: its lower load limit, set by the ${rule}, is ${Number(limit.toPrecision(6))}, ` +
        `above the greatest force applied, ${greatest}`,
    );
  }
  return { from: limit, to: greatest, rule };
}
