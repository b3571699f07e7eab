import type { Cell } from './cells';
import { CellFault } from './faults';
import { readNumber } from './readCell';

/** A probability or another part of a whole: strictly between 0 and 1. */
export function readShare(cell: Cell, argument: string, fallback: number): number {
  const share = readNumber(cell, argument, fallback);
  if (share > 0 && share < 1) return share;
  throw new CellFault('#VALUE!', `${argument}: found ${share}; expected a number between 0 and 1, such as ${fallback}`);
}
