import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { bisect } from './bisection';
import { badInput } from './errors';
import { fitPolynomial } from './polynomialFit';
import { counted } from './wording';

/** Days of a year. */
export const DAYS_PER_YEAR = 365.25;

/** A straight line through a value's history. */
export interface Drift {
  /** Units of the value per year. */
  readonly perYear: number;
  /** Standard error of the slope, units of the value per year. */
  readonly standardError: number;
  /** Residual standard deviation, units of the value. */
  readonly residualSd: number;
  /** Value of the line on a day. */
  readonly valueAt: (day: number) => number;
  /** Half-width of the prediction band for one new value on a day: t·s·√(1 + x′(X′X)⁻¹x). */
  readonly bandAt: (day: number, probability: number) => number;
}

/**
 * Least-squares line of a value over days.
 * @param days on any calendar of days, any order
 * @throws MetrologyError (input) with fewer than 3 values, or 2 different days
 * Source: linear regression (e.g. NIST/SEMATECH e-Handbook 4.5.1).
 */
export function drift(days: readonly number[], values: readonly number[]): Drift {
  // Counted from the middle of the history: the constant term of a line over today's day numbers would lose digits.
  const middle = days.reduce((sum, day) => sum + day / days.length, 0);
  const line = fitPolynomial(days.map((day) => day - middle), values, 1, { abscissa: 'date' });
  const { residualSd, dof, coefficients: [constant, slope], standardErrors: [, error] } = line;
  if (residualSd === undefined || error === undefined) {
    throw badInput(`found ${counted(line.n, 'value')}; a drift with its standard error needs at least 3`);
  }
  return {
    perYear: slope * DAYS_PER_YEAR,
    standardError: error * DAYS_PER_YEAR,
    residualSd,
    valueAt: (day) => constant + slope * (day - middle),
    bandAt: (day, probability) =>
      tQuantile(1 - (1 - probability) / 2, dof) * residualSd * Math.sqrt(1 + line.leverage(day - middle)),
  };
}

export type Side = 'upper' | 'lower';

/** When the prediction band meets a limit: a day, or "past" if it has on the last day of the history, or "never". */
export type Meeting = number | 'past' | 'never';

/**
 * First day on which the prediction band meets a limit. The upper edge of the band is convex and the lower edge concave, so
 * an edge that is inside on `from` crosses its limit once at the most.
 * @param from last day of the history
 * @param until last day looked at
 * @param probability of the band, two-sided
 */
export function dayOfLimit(line: Drift, limit: number, side: Side, from: number, until: number, probability: number): Meeting {
  const sign = side === 'upper' ? 1 : -1;
  const inside = (day: number) => sign * (line.valueAt(day) - limit) + line.bandAt(day, probability) < 0;
  if (!inside(from)) return 'past';
  return inside(until) ? 'never' : bisect(inside, from, until).near;
}
