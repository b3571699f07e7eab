import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { bisect } from './bisection';
import { badInput, noAnswer } from './errors';
import { derivative, evaluate, type Interval, invert } from './polynomial';
import type { PolynomialFit } from './polynomialFit';
import { counted } from './wording';

/** Force that a reading stands for, with the confidence limits of a single new reading. */
export interface ForceLimits {
  readonly force: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Force for a new reading, and the roots of f(F) ∓ t·s·√(1 + x′(X′X)⁻¹x) = reading on both sides of it, as a function of
 * the reading. The force is looked for over the forces of the calibration, and beyond either end no further than scatter can
 * put a reading taken there.
 *
 * @param fit output as a polynomial of force
 * @param range lowest and greatest force of the calibration
 * @param probability of the interval, two-sided
 * Source: NIST/SEMATECH e-Handbook, section 4.6.1 (load cell calibration).
 */
export function forceLimits(fit: PolynomialFit, range: Interval, probability: number): (reading: number) => ForceLimits {
  if (fit.residualSd === undefined) {
    throw badInput(`found ${counted(fit.n, 'reading')} for ${fit.n} coefficients; confidence limits need at least one reading more`);
  }
  const scale = tQuantile(1 - (1 - probability) / 2, fit.dof) * fit.residualSd;
  const band = (force: number) => scale * Math.sqrt(1 + fit.leverage(force));
  const slope = derivative(fit.coefficients);
  const search = widened(range, fit, (force) => band(force) / Math.abs(evaluate(slope, force)));

  return (reading) => {
    const force = invert(fit.coefficients, reading, search);
    const rising = Math.sign(evaluate(slope, force));
    const miss = (at: number) => rising * (evaluate(fit.coefficients, at) - reading);
    const expected = band(force) / Math.abs(evaluate(slope, force));
    return {
      force,
      lower: crossing((at) => band(at) + miss(at), force, -expected),
      upper: crossing((at) => band(at) - miss(at), force, expected),
    };
  };
}

/** The calibrated range with room at both ends for a reading as far off as the fit's own readings are. */
function widened({ from, to }: Interval, fit: PolynomialFit, halfWidth: (force: number) => number): Interval {
  const slope = derivative(fit.coefficients);
  const largest = fit.residuals.reduce((most, residual) => Math.max(most, Math.abs(residual)), 0);
  const reach = (force: number) =>
    Math.min(halfWidth(force) + largest / Math.abs(evaluate(slope, force)), FARTHEST_BEYOND * (to - from));
  return { from: from - reach(from), to: to + reach(to) };
}

/** How far beyond the calibration a force may lie at the most, as a fraction of its range. */
const FARTHEST_BEYOND = 0.1;

/**
 * Where a function that is positive at the start turns negative on one side of it: by steps that grow from the expected
 * distance, then bisection. A distance below rounding is none.
 */
function crossing(miss: (at: number) => number, start: number, step: number): number {
  for (let factor = 1.5; factor < 20; factor *= 1.5) {
    const end = start + factor * step;
    if (end === start) return start;
    if (miss(end) < 0) {
      const { near, far } = bisect((at) => miss(at) >= 0, start, end);
      return near + (far - near) / 2;
    }
  }
  throw noAnswer('the confidence limits of this reading do not close: the fit leaves too much scatter for it');
}
