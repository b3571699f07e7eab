import { badInput } from './errors';

/** Limits of an interval; one that is not given leaves its side open. */
export interface Limits {
  readonly lower?: number;
  readonly upper?: number;
}

/**
 * Refuses limits that are both missing, or that leave no room between them.
 * @param names of the two arguments, as messages name them
 */
export function requireLimits({ lower, upper }: Limits, names: readonly [string, string]): void {
  if (lower === undefined && upper === undefined) {
    throw badInput(`${names[0]}, ${names[1]}: found nothing in both; expected at least one limit`);
  }
  if (lower !== undefined && upper !== undefined && !(lower < upper)) {
    throw badInput(`${names[0]}: found ${lower}, with ${names[1]} ${upper}; expected a lower limit below the upper one`);
  }
}
