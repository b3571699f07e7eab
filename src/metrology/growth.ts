import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { bisect } from './bisection';
import { badInput, noAnswer } from './errors';
import { evaluate } from './polynomial';
import { fitPolynomial } from './polynomialFit';
import { counted } from './wording';

/** How a value moves, and grows uncertain, in the time after its calibration. */
export interface Growth {
  /** Change by time: 0 + b1·t + b2·t² … */
  readonly coefficients: readonly number[];
  /** Residual standard deviation, units of the value. */
  readonly residualSd: number;
  readonly dof: number;
  /** Change that is expected after a time, units of the value. */
  readonly changeAt: (time: number) => number;
  /** Standard uncertainty of a value after a time: √(u0² + s²·(1 + x′(X′X)⁻¹x)). */
  readonly uncertaintyAt: (time: number) => number;
}

/**
 * Growth of a value with the time since its calibration: least-squares polynomial through no change at no time.
 * @param times since the calibration before, any unit, greater than 0
 * @param changes of the value over those times
 * @param startUncertainty standard uncertainty u0 of the value on the day of calibration
 * @param degree 1 or 2
 * @throws MetrologyError (input) if there is no time more than coefficients
 * Source: NASA-HDBK-8739.19-5, chapter 7 (variables data), as passed on by a public secondary source.
 */
export function growth(times: readonly number[], changes: readonly number[], startUncertainty: number, degree: number): Growth {
  const { coefficients, residualSd, dof, leverage } = fitPolynomial(times, changes, degree, { constant: false, abscissa: 'time' });
  if (residualSd === undefined) {
    throw badInput(`found ${counted(times.length, 'change')} for a polynomial of degree ${degree}; its uncertainty needs at least ${degree + 1}`);
  }
  return {
    coefficients, residualSd, dof,
    changeAt: (time) => evaluate(coefficients, time),
    uncertaintyAt: (time) => Math.hypot(startUncertainty, residualSd * Math.sqrt(1 + leverage(time))),
  };
}

/** Where a value stands on the day of calibration, and what it must not leave. */
export interface GrowthLimits {
  readonly value: number;
  readonly lower?: number;
  readonly upper?: number;
  /** Greatest standard uncertainty allowed. */
  readonly uncertainty?: number;
  /** Probability of the band around the value, two-sided with two limits, one-sided with one. */
  readonly probability: number;
}

export type GrowthEnd = 'lower' | 'upper' | 'uncertainty';

/** Steps in which a crossing is looked for over the time looked at. */
const STEPS = 1000;

/**
 * Time after which the value, with its band t·u, first meets a limit, or its uncertainty the greatest allowed.
 * @param until longest time looked at, unit of the history
 * @throws MetrologyError (no answer) if a limit is met on the day of calibration already, or none is met by `until`
 */
export function timeToLimit(model: Growth, limits: GrowthLimits, until: number): { time: number; end: GrowthEnd } {
  const tails = limits.lower !== undefined && limits.upper !== undefined ? 2 : 1;
  const coverage = tQuantile(1 - (1 - limits.probability) / tails, model.dof);
  const broken = (time: number) => brokenEnd(model, limits, coverage, time);
  const first = broken(0);
  if (first) throw noAnswer(`the ${first === 'uncertainty' ? 'greatest uncertainty' : `${first} limit`} is met on the day of calibration already`);
  for (let step = 1; step <= STEPS; step += 1) {
    const [before, after] = [(until * (step - 1)) / STEPS, (until * step) / STEPS];
    if (broken(after) === undefined) continue;
    const { near, far } = bisect((time) => broken(time) === undefined, before, after);
    return { time: near, end: broken(far) as GrowthEnd };
  }
  throw noAnswer(`no limit is met within ${until}, the longest interval looked at`);
}

/** Which limit does not hold after a time; undefined if all do. */
function brokenEnd(
  model: Growth, { value, lower = -Infinity, upper = Infinity, uncertainty = Infinity }: GrowthLimits, coverage: number, time: number,
): GrowthEnd | undefined {
  const u = model.uncertaintyAt(time);
  const expected = value + model.changeAt(time);
  if (expected + coverage * u > upper) return 'upper';
  if (expected - coverage * u < lower) return 'lower';
  return u > uncertainty ? 'uncertainty' : undefined;
}
