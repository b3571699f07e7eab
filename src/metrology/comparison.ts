import { badInput } from './errors';

/**
 * Test accuracy ratio: tolerance / U, both as half-widths (±) in one unit.
 * Source: common practice; the measurement capability index of JCGM 106, 7.6.5, for a symmetrical tolerance.
 */
export function testRatio(tolerance: number, expanded: number): number {
  if (!(tolerance > 0)) throw badInput(`tolerance: found ${tolerance}; expected a half-width above 0`);
  if (!(expanded > 0)) throw badInput(`U: found ${expanded}; expected an expanded uncertainty above 0`);
  return tolerance / expanded;
}

/**
 * Normalised error En of two results: (x1 − x2)/√(U1² + U2²), signed; |En| ≤ 1 means that they agree within their uncertainties.
 * @param U1, U2 expanded uncertainties (k = 2), 0 or more and not both 0; all in one unit
 * Source: ISO 13528 (from memory).
 */
export function normalisedError(x1: number, U1: number, x2: number, U2: number): number {
  if (!(U1 >= 0)) throw badInput(`U1: found ${U1}; expected an expanded uncertainty, 0 or more`);
  if (!(U2 >= 0)) throw badInput(`U2: found ${U2}; expected an expanded uncertainty, 0 or more`);
  const combined = Math.hypot(U1, U2);
  if (combined === 0) throw badInput('U1, U2: found 0 in both; expected at least one uncertainty above 0');
  return (x1 - x2) / combined;
}
