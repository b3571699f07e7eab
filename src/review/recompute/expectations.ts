import type { FilledCell } from '../../worksheets/filledSheet';
import type { ReviewedSheet } from '../reviewedSheet';
import type { Expected } from './expected';
import type { Figure } from './statics';

/** Gathers what cells of a sheet should hold; cells that are not there, and figures that cannot be told, are passed over. */
export class Expectations {
  readonly list: Expected[] = [];

  constructor(readonly sheet: ReviewedSheet) {}

  /** A result by its id. Null: nothing is to be told yet. */
  result(id: string, expected: number | string | null | Figure | undefined, more: { readonly scale?: number; readonly relative?: number } = {}): this {
    return this.cell(this.sheet.cells.cell(`value_${id}`), expected, more);
  }

  /** A cell that should hold what the independent path gives. */
  cell(cell: FilledCell | undefined, expected: number | string | null | Figure | undefined, { scale = 1, relative }: { readonly scale?: number; readonly relative?: number } = {}): this {
    if (!cell || expected === undefined) return this;
    const figure = typeof expected === 'object' && expected !== null ? expected : { value: expected, scale };
    if (typeof figure.value === 'number' && !Number.isFinite(figure.value)) return this;
    this.list.push({ cell, ...figure, ...(relative === undefined ? {} : { relative }) });
    return this;
  }

  /** Every result is to wait for readings, but for some that do not need them all. */
  nothingYet(but: readonly string[] = []): readonly Expected[] {
    this.sheet.cells.namesAfter('value_').filter((id) => !but.includes(id)).forEach((id) => this.result(id, null));
    return this.list;
  }

  /** Cells one below the other. */
  column(cells: readonly FilledCell[], expected: readonly (number | string | null | undefined)[], more: { readonly scale?: number; readonly relative?: number } = {}): this {
    cells.forEach((cell, i) => this.cell(cell, expected[i], more));
    return this;
  }
}
