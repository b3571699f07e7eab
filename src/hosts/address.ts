import type { IRange } from '@univerjs/core';
import { address, columnNumber } from '../worksheets/planBuilder';

/** A cell by its row and column, both counted from 0. */
export interface CellPlace {
  readonly row: number;
  readonly column: number;
}

/** "B4" → row 3, column 1. `$` is allowed. Throws on anything that is no cell address. */
export function placeOf(address: string): CellPlace {
  const match = /^\$?([A-Z]{1,3})\$?([1-9]\d*)$/i.exec(address);
  if (!match) throw new Error(`found "${address}"; expected a cell address like B4`);
  return { row: Number(match[2]) - 1, column: columnNumber(match[1]) - 1 };
}

/** Row 3, column 1 → "B4". */
export function addressOf({ row, column }: CellPlace): string {
  return address(column + 1, row + 1);
}

/** "A1:H1", or one cell, → the range. */
export function rangeOf(address: string): IRange {
  const [first, last = first] = address.split(':');
  const start = placeOf(first);
  const end = placeOf(last);
  return {
    startRow: Math.min(start.row, end.row),
    startColumn: Math.min(start.column, end.column),
    endRow: Math.max(start.row, end.row),
    endColumn: Math.max(start.column, end.column),
  };
}

export function isInside({ row, column }: CellPlace, range: IRange): boolean {
  return row >= range.startRow && row <= range.endRow && column >= range.startColumn && column <= range.endColumn;
}
