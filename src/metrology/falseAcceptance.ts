import { badInput } from './errors';
import { requireLimits, type Limits } from './limits';
import { outside } from './normalInterval';

/**
 * Probability that an item is out of tolerance, given its measured value (specific risk): the part of a normal distribution
 * about the value that lies outside the limits, Φ((lower − value)/u) + Φ((value − upper)/u).
 *
 * @param value, tolerance, u: one and the same unit; u is the standard uncertainty of the value, above 0
 * Source: JCGM 106, 7.1 to 7.4 (specific consumer’s risk, 9.3.2).
 */
export function falseAcceptance(value: number, tolerance: Limits, u: number): number {
  requireLimits(tolerance, ['lower', 'upper']);
  if (!(u > 0)) throw badInput(`u: found ${u}; expected a standard uncertainty above 0`);
  const { lower = -Infinity, upper = Infinity } = tolerance;
  return outside((lower - value) / u, (upper - value) / u);
}
