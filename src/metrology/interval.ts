import { noAnswer } from './errors';

/** Shortest and longest interval that the customer allows, in the unit of the interval; absent: no bound. */
export interface IntervalBounds {
  readonly least?: number;
  readonly greatest?: number;
}

/** An interval held between the customer's bounds. */
export function bounded(interval: number, { least = 0, greatest = Infinity }: IntervalBounds): number {
  return Math.min(Math.max(interval, least), greatest);
}

/** Part of the limit up to which an item counts as well inside. Source: ILAC-G24 / OIML D 10 (from memory). */
export const WELL_INSIDE = 0.8;

/** Part by which the staircase extends an interval: common practice, no source. */
export const EXTENSION = 0.1;

/**
 * Next interval by the staircase (automatic adjustment): longer by the part `extension` if the item was found well inside
 * its limit, the same if inside, shorter by {@link shortening} if outside. The steps up and down then balance when the part
 * R of the items is found inside: (1 + a)^R·(1 − b)^(1 − R) = 1.
 * @param found greatest error found, as a part of its limit: up to 0.8 well inside, above 1 outside
 * Source: ILAC-G24 / OIML D 10; steps of NCSLI RP-1, simple response (all from memory).
 */
export function staircaseInterval(current: number, found: number, target: number, extension = EXTENSION): number {
  if (found > 1) return current * shortening(target, extension);
  return found <= WELL_INSIDE ? current * (1 + extension) : current;
}

/** Factor by which the staircase shortens: 1 − b = (1 + a)^(−R/(1 − R)). */
export function shortening(target: number, extension: number): number {
  return (1 + extension) ** (-target / (1 - target));
}

/** How many items were found inside and outside their limits. */
export interface FoundCounts {
  readonly inside: number;
  readonly outside: number;
}

/**
 * Next interval from the part of items found inside their limits, reliability taken to fall exponentially with time:
 * I·ln(target)/ln(observed).
 * @throws MetrologyError (no answer) if none was outside and there is no greatest interval, or none inside and no least one:
 * the formula then has no end
 * Source: exponential reliability model (ILAC-G24 / OIML D 10, from memory).
 */
export function reliabilityInterval(current: number, { inside, outside }: FoundCounts, target: number, bounds: IntervalBounds): number {
  if (outside === 0) {
    if (bounds.greatest === undefined) throw noAnswer(`none of ${inside} was outside: the model sets no end to the interval. Give the greatest one`);
    return bounds.greatest;
  }
  if (inside === 0) {
    if (bounds.least === undefined) throw noAnswer(`none of ${outside} was inside: the model leaves no interval. Give the least one`);
    return bounds.least;
  }
  return bounded((current * Math.log(target)) / -Math.log1p(outside / inside), bounds);
}
