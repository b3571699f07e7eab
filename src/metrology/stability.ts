import { badInput } from './errors';
import { evaluate } from './polynomial';

/**
 * Change of response that each class allows between two calibrations, fraction of reading. Source: ASTM E74 (from memory).
 */
export const STABILITY_LIMITS = { AA: 0.00032, A: 0.0016 } as const;
export type StabilityClass = keyof typeof STABILITY_LIMITS;

/**
 * Change of response at a force between two calibrations, fraction of the old reading: (new − old)/old. Positive if the
 * transducer gives more than before. Undefined if the old response there is 0.
 * @param before coefficients of output as a polynomial of force, constant first
 * @param after the same, of the later calibration
 * @param force magnitude
 * Source: common practice.
 */
export function shift(before: readonly number[], after: readonly number[], force: number): number | undefined {
  const old = evaluate(before, force);
  return old === 0 ? undefined : (evaluate(after, force) - old) / old;
}

/** Worst change over a list of forces. */
export interface WorstShift {
  readonly shift: number;
  readonly force: number;
}

/**
 * The shift of largest magnitude over the forces, sign kept, and the force at which it stands (the first of equal ones).
 * @throws MetrologyError (input) if the old response at a force is 0
 */
export function worstShift(before: readonly number[], after: readonly number[], forces: readonly number[]): WorstShift {
  return forces
    .map((force) => {
      const at = shift(before, after, force);
      if (at === undefined) throw badInput(`forces: the old response at ${force} is 0; expected forces at which the transducer gives an output`);
      return { force, shift: at };
    })
    .reduce((worst, one) => (Math.abs(one.shift) > Math.abs(worst.shift) ? one : worst));
}
