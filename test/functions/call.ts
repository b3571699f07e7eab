import { callFunction, type Argument } from '../../src/functions/call';
import type { Cell } from '../../src/functions/cells';
import { CellFault } from '../../src/functions/faults';

/** A column of cells. */
export function column(...cells: readonly Cell[]): Cell[][] {
  return cells.map((cell) => [cell]);
}

/** Several columns side by side. */
export function columns(...lists: readonly (readonly Cell[])[]): Cell[][] {
  return lists[0].map((_, i) => lists.map((list) => list[i]));
}

/** A call expected to give a number. */
export function number(id: string, ...args: Argument[]): number {
  const result = callFunction(id, args);
  if (typeof result !== 'number') throw new Error(`PROVE.${id} gave ${JSON.stringify(result)}, not a number`);
  return result;
}

/** A call expected to spill. */
export function table(id: string, ...args: Argument[]): any[][] {
  const result = callFunction(id, args);
  if (!Array.isArray(result)) throw new Error(`PROVE.${id} gave ${JSON.stringify(result)}, not a table`);
  return result;
}

/** The error a call is expected to end in, as "code: message". */
export function fault(id: string, ...args: Argument[]): string {
  try {
    const result = callFunction(id, args);
    throw new Error(`PROVE.${id} gave ${JSON.stringify(result)} instead of an error`);
  } catch (error) {
    if (error instanceof CellFault) return `${error.code}: ${error.message}`;
    throw error;
  }
}
