import { badInput } from './errors';
import { requireLimits, type Limits } from './limits';

/** A statement of conformity. */
export type Decision = 'pass' | 'conditional pass' | 'conditional fail' | 'fail';

/**
 * Statement of conformity with a guard band w = guardFactor·U inside and outside each limit. By the distance d from the nearer
 * limit, positive inside the tolerance: d ≥ w pass, d ≥ 0 conditional pass, d ≥ −w conditional fail, else fail.
 * A value on a border belongs to the better side. Without a guard band it is pass or fail.
 *
 * @param value, tolerance, expanded (U, 0 or more): one and the same unit
 * @param guardFactor w/U: 0 for simple acceptance, 1 for w = U; 0 or more
 * Source: ILAC-G8:09/2019, 4.2 (from memory); JCGM 106, 8.2 and 8.3.
 */
export function decide(value: number, tolerance: Limits, expanded: number, guardFactor: number): Decision {
  requireLimits(tolerance, ['lower', 'upper']);
  if (!(expanded >= 0)) throw badInput(`U: found ${expanded}; expected an expanded uncertainty, 0 or more`);
  if (!(guardFactor >= 0)) throw badInput(`rule: found ${guardFactor}; expected a guard factor of 0 or more`);
  const { lower = -Infinity, upper = Infinity } = tolerance;
  const guard = guardFactor * expanded;
  if (guard === Infinity) throw badInput(`rule: found ${guardFactor}, with U ${expanded}; expected a guard band in the range of numbers`);
  const distance = Math.min(value - lower, upper - value);
  const nearer = value - lower < upper - value ? lower : upper;
  // 0.2 is on the border of 0.3 − 0.1, though binary fractions say it is just beyond.
  const rounding = 4 * Number.EPSILON * Math.max(Math.abs(value), Math.abs(nearer), guard);
  const reaches = (border: number) => distance >= border - rounding;
  if (reaches(guard)) return 'pass';
  if (guard > 0 && reaches(0)) return 'conditional pass';
  return guard > 0 && reaches(-guard) ? 'conditional fail' : 'fail';
}
