import { CellValueType, type ICellData, type Nullable } from '@univerjs/core';
import type { Cell } from '../../functions/cells';
import { CellFault, type FaultCode } from '../../functions/faults';

/** What may be put into a cell of the engine: a value, or a formula with its leading "=". Text that starts with "=" stays text. */
export type EngineCell = Cell | { readonly formula: string };

/** The error values a cell may hold, the engine's own ones included. */
export type CellCode = FaultCode | '#SPILL!' | '#CALC!' | '#CYCLE!' | '#ERROR!';

/** An error in a cell: its code, and why. */
export class CellError {
  constructor(readonly error: string, readonly message: string) {}
}

const CODES: ReadonlySet<string> = new Set<CellCode>([
  '#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NAME?', '#REF!', '#NULL!', '#SPILL!', '#CALC!', '#CYCLE!', '#ERROR!',
]);

/** A cell as the engine keeps it. The type is always given, since without it the engine guesses numbers and dates from text. */
export function toCellData(cell: EngineCell): ICellData | null {
  if (cell === null || cell === undefined || cell === '') return null;
  if (cell instanceof CellFault) return { v: cell.code, t: CellValueType.STRING };
  if (typeof cell === 'object') return { f: cell.formula };
  if (typeof cell === 'boolean') return { v: cell ? 1 : 0, t: CellValueType.BOOLEAN };
  return { v: cell, t: typeof cell === 'number' ? CellValueType.NUMBER : CellValueType.STRING };
}

/** The value in a cell of the engine, unrounded: null if blank, the code of an error as a text. */
export function fromCellData(data: Nullable<ICellData>): number | string | boolean | null {
  const value = data?.v;
  if (value === null || value === undefined) return null;
  return data?.t === CellValueType.BOOLEAN ? Boolean(value) : value;
}

export function isErrorCode(value: unknown): value is CellCode {
  return typeof value === 'string' && CODES.has(value);
}
