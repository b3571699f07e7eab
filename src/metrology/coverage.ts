import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import normalQuantile from '@stdlib/stats-base-dists-normal-quantile';
import tQuantile from '@stdlib/stats-base-dists-t-quantile';
import { badInput } from './errors';

/** Probability of ± 2 standard deviations of a normal distribution, as it is commonly written. */
export const TWO_SIGMA = 0.9545;

/** Probabilities as they are written for 1, 2 and 3 standard deviations; the exact ones have more digits. */
const SIGMAS = new Map([[0.6827, 1], [TWO_SIGMA, 2], [0.9973, 3]]);

/** Beyond this many degrees of freedom Student's t is the normal distribution to 12 digits. */
const PRACTICALLY_INFINITE = 1e12;

/**
 * Coverage factor k: ± k standard uncertainties enclose the given probability; Student's t with these degrees of freedom.
 * 0.6827, 0.9545 and 0.9973 stand for exactly 1, 2 and 3 standard deviations of a normal distribution.
 * @param probability two-sided, between 0 and 1
 * @param dof degrees of freedom, 1 or more; need not be whole; Infinity gives the normal distribution
 * Source: JCGM 100, G.3 and table G.2.
 */
export function coverageFactor(probability: number, dof: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw badInput(`probability: found ${probability}; expected a number between 0 and 1, such as ${TWO_SIGMA} (95.45 %)`);
  }
  // The lower tail: near a probability of 1 it keeps the digits that 1 − tail would lose.
  const sigma = SIGMAS.get(probability);
  const tail = sigma === undefined ? (1 - probability) / 2 : normalCdf(-sigma, 0, 1);
  if (dof <= PRACTICALLY_INFINITE) return Math.abs(tQuantile(tail, dof));
  return sigma ?? Math.abs(normalQuantile(tail, 0, 1));
}
