import betaQuantile from '@stdlib/stats-base-dists-beta-quantile';
import binomialCdf from '@stdlib/stats-base-dists-binomial-cdf';
import type { FoundCounts } from './interval';

/** What counts of items inside and outside say about an interval. */
export interface IntervalTest {
  /** Part found inside. */
  readonly observed: number;
  /** Confidence with which the counts reject the target; undefined if the part found inside reaches it. */
  readonly rejection: number | undefined;
  /** Limits of the true part inside. */
  readonly lower: number;
  readonly upper: number;
  /** Interval to use next, in the unit of the current one. */
  readonly next: number;
}

/** An interval is at the most halved in one step. */
const LEAST_FACTOR = 0.5;

/**
 * Tests whether the counts contradict a target reliability, and shortens the interval if they do: with x of n inside and
 * x/n below the target R, Q = 1 − 2·P(X ≤ x; n, R); if Q exceeds the confidence asked, next = I·10^((x/n − R)·Q), not below
 * half. Otherwise the interval stands. The limits are those of Clopper and Pearson, two-sided.
 * The source also lengthens intervals; its formula as passed on could not be verified and is left out.
 * Source: NCSLI RP-1, method A3, as passed on by a public secondary source.
 *
 * @param confidence of the limits, and the least rejection that shortens; between 0 and 1
 */
export function intervalTest(current: number, { inside, outside }: FoundCounts, target: number, confidence: number): IntervalTest {
  const n = inside + outside;
  const observed = inside / n;
  const rejection = observed < target ? Math.max(0, 1 - 2 * binomialCdf(inside, n, target)) : undefined;
  const shortens = rejection !== undefined && rejection > confidence;
  const factor = shortens ? Math.max(LEAST_FACTOR, 10 ** ((observed - target) * rejection)) : 1;
  const tail = (1 - confidence) / 2;
  return {
    observed, rejection, next: current * factor,
    lower: inside === 0 ? 0 : betaQuantile(tail, inside, outside + 1),
    upper: outside === 0 ? 1 : betaQuantile(1 - tail, inside + 1, outside),
  };
}
