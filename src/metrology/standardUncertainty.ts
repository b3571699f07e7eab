import { badInput } from './errors';

/** What a half-width is divided by to give the standard deviation of values spread over it. */
export const DIVISORS = {
  /** An expanded uncertainty with k = 2, as a certificate states it. */
  normal: 2,
  /** Anywhere within ± the half-width, each value as likely. */
  rectangular: Math.sqrt(3),
  /** Within ± the half-width, the middle likelier. */
  triangular: Math.sqrt(6),
  /** Within ± the half-width, the ends likelier: what swings as a sine, a controlled room temperature for one. */
  ushaped: Math.SQRT2,
  /** Rounding to a full step: a rectangular spread of ± half a step. */
  resolution: Math.sqrt(12),
} as const;

/** A distribution of values by its name. */
export type Distribution = keyof typeof DIVISORS;

/**
 * Standard uncertainty of what is known by its limits: halfWidth / divisor, in the units of the half-width.
 * @param halfWidth ± limit, 0 or more; for "normal" the expanded uncertainty at k = 2; for "resolution" the full step
 * Source: JCGM 100, 4.3.3 (normal), 4.3.7, 4.3.9 and F.2.2.1 (resolution); JCGM 101, 6.4.6 (U-shaped).
 */
export function standardUncertainty(halfWidth: number, distribution: Distribution): number {
  if (!(halfWidth >= 0)) throw badInput(`halfWidth: found ${halfWidth}; expected 0 or more`);
  return halfWidth / DIVISORS[distribution];
}
