import fCdf from '@stdlib/stats-base-dists-f-cdf';
import { groups } from './calibrationData';
import type { PolynomialFit } from './polynomialFit';

/** Comparison of what the polynomial misses with the scatter of repeated readings. */
export interface LackOfFit {
  /** F = (lack-of-fit sum of squares/dof)/(pure-error sum of squares/dof). */
  readonly f: number;
  readonly dof: number;
  readonly pureErrorDof: number;
  /** Probability of an F as large if the polynomial is right. */
  readonly p: number;
}

/**
 * Lack-of-fit test from repeats at the same abscissa; undefined without repeats, without scatter between them, or if the
 * polynomial passes through every mean by construction.
 * Source: NIST/SEMATECH e-Handbook, section 4.4.4.6.
 */
export function lackOfFit(x: readonly number[], y: readonly number[], fit: PolynomialFit): LackOfFit | undefined {
  const repeats = groups(fit.residuals.map((residual, i) => ({ residual, x: x[i] })), (point) => point.x);
  const pureErrorDof = fit.n - repeats.length;
  const dof = fit.dof - pureErrorDof;
  if (pureErrorDof < 1 || dof < 1) return undefined;
  const pureError = repeats.reduce((sum, group) => sum + scatter(group.map((point) => point.residual)), 0);
  const lack = repeats.reduce((sum, group) => sum + squareOfMean(group.map((point) => point.residual)), 0);
  const rounding = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0) * 2 ** -52;
  if (pureError <= fit.n * rounding ** 2) return undefined;
  const f = lack / dof / (pureError / pureErrorDof);
  // The upper tail as a lower tail of 1/F: 1 − cdf would lose a small probability to rounding.
  return { f, dof, pureErrorDof, p: fCdf(1 / f, pureErrorDof, dof) };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function scatter(values: readonly number[]): number {
  const middle = mean(values);
  return values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
}

function squareOfMean(values: readonly number[]): number {
  return values.length * mean(values) ** 2;
}
