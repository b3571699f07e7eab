import { address, columnNumber } from './planBuilder';

/** Columns and rows of a range, all from 1. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const RANGE = /^\$?([A-Z]{1,3})\$?(\d{1,7})(?::\$?([A-Z]{1,3})\$?(\d{1,7}))?$/i;

/** The area of a range, like "B4:C9" or "B4"; undefined if it is none. */
export function areaOf(range: string): Area | undefined {
  const match = RANGE.exec(range);
  if (!match) return undefined;
  const [, left, top, right = left, bottom = top] = match;
  return { left: columnNumber(left), top: Number(top), right: columnNumber(right), bottom: Number(bottom) };
}

/** The area that begins at a cell and has so many rows and columns. */
export function areaFrom(at: string, rows: number, columns: number): Area | undefined {
  const start = areaOf(at);
  return start && { ...start, right: start.left + columns - 1, bottom: start.top + rows - 1 };
}

export function holds({ left, top, right, bottom }: Area, { column, row }: { readonly column: number; readonly row: number }): boolean {
  return column >= left && column <= right && row >= top && row <= bottom;
}

/** The addresses of an area, row by row. */
export function addressesOf({ left, top, right, bottom }: Area): string[][] {
  return Array.from({ length: bottom - top + 1 }, (_, i) => Array.from({ length: right - left + 1 }, (__, j) => address(left + j, top + i)));
}
