import { worst } from './staticRuns';

/** Zero readings around one series, output units. */
export interface ZeroPair {
  /** i_o, before the forces. */
  readonly before: number;
  /** i_f, after their removal. */
  readonly after: number;
}

/**
 * Relative zero error f0 = (i_f − i_o)/X_N: fraction, signed; of several series the worst.
 * @param zeros one pair a series, at least one
 * @param greatestDeflection X_N, output units
 * Source: ISO 376:2011 (from memory).
 */
export function zeroError(zeros: readonly ZeroPair[], greatestDeflection: number): number {
  return worst(zeros.map(({ before, after }) => (after - before) / greatestDeflection));
}

/**
 * Relative creep c = |i300 − i30|/|X_N|: fraction, ≥ 0.
 * @param at30, at300 readings 30 s and 300 s after the greatest force is applied or removed, output units
 * @param greatestDeflection X_N, output units
 * Source: ISO 376:2011 (from memory).
 */
export function creepError(at30: number, at300: number, greatestDeflection: number): number {
  return Math.abs(at300 - at30) / Math.abs(greatestDeflection);
}
