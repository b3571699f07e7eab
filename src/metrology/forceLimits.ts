import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { badInput, noAnswer } from './errors';
import { derivative, evaluate, invert } from './polynomial';
import type { PolynomialFit } from './polynomialFit';

/** Force that a reading stands for, with the confidence limits of a single new reading. */
export interface ForceLimits {
  readonly force: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * Force for a new reading, and the roots of f(F) ∓ t·s·√(1 + x′(X′X)⁻¹x) = reading on both sides of it.
 * The force is looked for from zero to the greatest force of the calibration, and beyond either end by no more than the
 * half-width of the limits there.
 *
 * @param fit output as a polynomial of force
 * @param greatest greatest force of the calibration
 * @param probability of the interval, two-sided
 * Source: NIST/SEMATECH e-Handbook, section 4.6.1 (load cell calibration).
 */
export function forceLimits(fit: PolynomialFit, greatest: number, reading: number, probability: number): ForceLimits {
  if (fit.residualSd === undefined) {
    throw badInput(`found ${fit.n} readings for ${fit.n} coefficients; confidence limits need at least one reading more`);
  }
  const scale = tQuantile(1 - (1 - probability) / 2, fit.dof) * fit.residualSd;
  const band = (force: number) => scale * Math.sqrt(1 + fit.leverage(force));
  const slope = derivative(fit.coefficients);
  const reach = (force: number) => Math.abs(band(force) / evaluate(slope, force));
  const force = invert(fit.coefficients, reading, { from: -reach(0), to: greatest + reach(greatest) });

  const rising = Math.sign(evaluate(slope, force));
  const miss = (at: number, side: number) => rising * (evaluate(fit.coefficients, at) - reading) + side * band(at);
  return {
    force,
    lower: crossing((at) => miss(at, 1), force, -reach(force)),
    upper: crossing((at) => miss(at, -1), force, reach(force)),
  };
}

/** Where a function changes sign on one side of a start, by steps that grow from the expected distance, then bisection. */
function crossing(miss: (at: number) => number, start: number, step: number): number {
  const sign = Math.sign(miss(start));
  if (sign === 0) return start;
  for (let factor = 1.5; factor < 20; factor *= 1.5) {
    const end = start + factor * step;
    if (Math.sign(miss(end)) !== sign) return bisect(miss, start, end);
  }
  throw noAnswer('the confidence limits of this reading do not close: the fit leaves too much scatter for it');
}

function bisect(miss: (at: number) => number, from: number, to: number): number {
  const sign = Math.sign(miss(from));
  let near = from;
  let far = to;
  for (let halving = 0; halving < 200; halving += 1) {
    const middle = near + (far - near) / 2;
    if (middle === near || middle === far) break;
    if (Math.sign(miss(middle)) === sign) near = middle;
    else far = middle;
  }
  return near + (far - near) / 2;
}
