import type { Limits } from '../metrology/limits';
import type { Cell } from './cells';
import { isBlank, readNumber } from './readCell';

/** A limit that may be missing: undefined if the cell is blank. */
export function readLimit(cell: Cell, argument: string): number | undefined {
  return isBlank(cell) ? undefined : readNumber(cell, argument);
}

/** Limits of a tolerance; a blank one leaves its side open. */
export function readTolerance(lower: Cell, upper: Cell): Limits {
  return { lower: readLimit(lower, 'lower'), upper: readLimit(upper, 'upper') };
}
