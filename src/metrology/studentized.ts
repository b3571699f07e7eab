import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import type { PolynomialFit } from './polynomialFit';

/** How far one point lies from what all the others say of it. */
export interface DeletedResidual {
  /** y less the value that the polynomial fitted to all the other points has there, in units of y. */
  readonly deviation: number;
  /**
   * The deviation over its standard error, which the other points alone give: Student's t with {@link PolynomialFit.dof} − 1
   * degrees of freedom if the point belongs to them. Infinite where the others leave nothing but rounding.
   */
  readonly t: number;
}

/** Residuals below this share of the largest ordinate are rounding. */
const ROUNDING = 1e-13;

/**
 * Externally studentised (deleted) residuals, in the order of the points: e/(s(i)·√(1 − h)), where h is the leverage of the
 * point and s(i)² = (Σe² − e²/(1 − h))/(dof − 1) the residual variance of a fit without it; no fit is repeated.
 * A point that no other bears on (h = 1) has no residual to speak of: both are 0.
 *
 * @param x, y the points of the fit
 * @returns undefined with fewer than two degrees of freedom
 * Source: R. D. Cook and S. Weisberg, Residuals and Influence in Regression (1982), section 2.2, from memory.
 */
export function deletedResiduals(x: readonly number[], y: readonly number[], fit: PolynomialFit): DeletedResidual[] | undefined {
  if (fit.dof < 2) return undefined;
  const rounding = ROUNDING * y.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return fit.residuals.map((residual, i) => {
    const left = 1 - fit.leverage(x[i]);
    if (left < 1e-9) return { deviation: 0, t: 0 };
    const deviation = residual / left;
    if (Math.abs(deviation) <= rounding) return { deviation, t: 0 };
    const variance = (fit.sumOfSquares - residual * deviation) / (fit.dof - 1);
    return { deviation, t: variance > rounding ** 2 ? residual / Math.sqrt(variance * left) : residual * Infinity };
  });
}

/**
 * The magnitude of t that the largest of n deleted residuals exceeds by chance with at most the given probability:
 * Student's t at 1 − probability/(2n) (Bonferroni). Source: as above.
 * @param dof degrees of freedom of the fit with all points, ≥ 2
 */
export function outlierThreshold(n: number, dof: number, probability: number): number {
  return tQuantile(1 - probability / (2 * n), dof - 1);
}
