import { FilledSheet, type FilledCell } from '../worksheets/filledSheet';
import { columnNumber, address } from '../worksheets/planBuilder';
import type { ReadCell, ReadSheet } from '../worksheets/readSheet';

/** A sheet under review: its cells by name, and by place where a name covers only the column beside. */
export class ReviewedSheet {
  readonly cells: FilledSheet;
  private readonly byAddress: ReadonlyMap<string, ReadCell>;

  constructor(readonly read: ReadSheet) {
    this.cells = new FilledSheet(read);
    this.byAddress = new Map(read.cells.map((cell) => [cell.at, cell]));
  }

  get name(): string {
    return this.read.name;
  }

  /** The cell of a plain address like "B4"; empty text counts as blank. */
  at(at: string): FilledCell {
    const { column, row } = placeOf(at);
    const cell = this.byAddress.get(at);
    const value = cell?.value ?? null;
    return { ...cell, at, column, row, value: typeof value === 'string' && value.trim() === '' ? null : value };
  }

  /** The cell so many columns right of another. */
  beside({ column, row }: Pick<FilledCell, 'column' | 'row'>, columns: number): FilledCell {
    return this.at(address(column + columns, row));
  }

  has(name: string): boolean {
    return this.cells.cell(name) !== undefined;
  }

  /** Cells of a name, row by row, in one list; none without the name. */
  all(name: string): readonly FilledCell[] {
    return this.cells.rows(name)?.flat() ?? [];
  }

  /** The first column of a name. */
  column(name: string): readonly FilledCell[] {
    return this.cells.columns(name)?.[0] ?? [];
  }

  number(name: string): number | undefined {
    return this.cells.number(name);
  }
}

/** Column and row of an address, both from 1. */
export function placeOf(at: string): { readonly column: number; readonly row: number } {
  const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(at) ?? [];
  if (letters === undefined) throw new Error(`found the address "${at}"; expected one like B4`);
  return { column: columnNumber(letters), row: Number(digits) };
}

/** The number in a cell, if it is one. */
export function numberIn(cell: FilledCell | undefined): number | undefined {
  return typeof cell?.value === 'number' ? cell.value : undefined;
}
