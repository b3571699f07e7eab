import { type Area, areaOf } from './area';
import { address } from './planBuilder';
import type { ReadCell, ReadSheet, ReadValue } from './readSheet';

/** A cell of a filled-in sheet; value null if nothing stands there. */
export interface FilledCell extends ReadCell {
  /** Column and row, both from 1. */
  readonly column: number;
  readonly row: number;
}

/** More cells than any run has: a name that covers more was made for something else. */
const MOST_CELLS = 20_000;

/** A filled-in sheet, its cells found by the sheet's own names. A name that is no plain range of the sheet counts as absent. */
export class FilledSheet {
  private readonly cells: ReadonlyMap<string, ReadCell>;
  private readonly ranges = new Map<string, Area>();

  constructor(sheet: ReadSheet) {
    this.cells = new Map(sheet.cells.map((cell) => [cell.at, cell]));
    for (const { name, range } of sheet.names) {
      const read = readRange(range);
      if (read) this.ranges.set(name.toLowerCase(), read);
    }
  }

  /** Names that start so, without that start, in the order of their ranges on the sheet. */
  namesAfter(start: string): string[] {
    return [...this.ranges]
      .filter(([name]) => name.startsWith(start) && name.length > start.length)
      .sort(([, a], [, b]) => a.top - b.top || a.left - b.left)
      .map(([name]) => name.slice(start.length));
  }

  /** The cells of a name, row by row. */
  rows(name: string): FilledCell[][] | undefined {
    const range = this.ranges.get(name);
    if (!range) return undefined;
    return span(range.top, range.bottom).map((row) => span(range.left, range.right).map((column) => this.at(column, row)));
  }

  /** The cells of a name, column by column. */
  columns(name: string): FilledCell[][] | undefined {
    const rows = this.rows(name);
    return rows?.[0].map((_, i) => rows.map((row) => row[i]));
  }

  /** The first cell of a name. */
  cell(name: string): FilledCell | undefined {
    const range = this.ranges.get(name);
    return range && this.at(range.left, range.top);
  }

  /** The nearest text to the left of a cell, in its row: what the cell is called. */
  labelOf({ column, row }: FilledCell): string | undefined {
    for (let left = column - 1; left > 0; left -= 1) {
      const { value } = this.at(left, row);
      if (typeof value === 'string') return value;
    }
    return undefined;
  }

  number(name: string): number | undefined {
    const value = this.cell(name)?.value;
    return typeof value === 'number' ? value : undefined;
  }

  text(name: string): string | undefined {
    const value = this.cell(name)?.value;
    return typeof value === 'string' ? value : undefined;
  }

  private at(column: number, row: number): FilledCell {
    const at = address(column, row);
    const cell = this.cells.get(at);
    return { ...cell, at, column, row, value: blankIfEmpty(cell?.value ?? null) };
  }
}

/** Text without a visible character, as a formula gives it where there is nothing to show, is blank. */
function blankIfEmpty(value: ReadValue): ReadValue {
  return typeof value === 'string' && value.trim() === '' ? null : value;
}

/** The area of a name that is a plain range, forwards, and no larger than any run. */
function readRange(text: string): Area | undefined {
  const range = areaOf(text);
  if (!range) return undefined;
  const cells = (range.right - range.left + 1) * (range.bottom - range.top + 1);
  return range.top > 0 && range.right >= range.left && range.bottom >= range.top && cells <= MOST_CELLS ? range : undefined;
}

function span(first: number, last: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}
