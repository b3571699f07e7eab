/** Workbooks for the tests of the review: computed, live so that an edit is recomputed, and with edits that nothing recomputes. */
import { computed, type Engine } from '../engine/bundle';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { placeOf } from '../../src/review/reviewedSheet';
import { address } from '../../src/worksheets/planBuilder';
import type { SheetPlan } from '../../src/worksheets/plan';
import type { ReadCell, ReadSheet, ReadValue } from '../../src/worksheets/readSheet';

/** A workbook in the engine. */
export class LiveWorkbook {
  private constructor(private readonly engine: Engine, readonly plans: readonly SheetPlan[]) {}

  static async of(plans: readonly SheetPlan[]): Promise<LiveWorkbook> {
    return new LiveWorkbook(await computed(...engineSheets(plans)), plans);
  }

  /** Every sheet as it is read back, with the number formats of its plan. */
  async read(): Promise<ReadSheet[]> {
    const host = this.engine.sheetsHost();
    const sheets: ReadSheet[] = [];
    for (const plan of this.plans) {
      const formats = new Map(plan.cells.map(({ at, format }) => [at, format]));
      const { name, cells, names } = await host.read(plan.name);
      sheets.push({ name, names: names ?? [], cells: cells.map((cell) => ({ ...cell, ...(formats.get(cell.at) === undefined ? {} : { format: formats.get(cell.at) }) })) });
    }
    return sheets;
  }

  /** The workbook with constants put in, everything recomputed; afterwards it is as before. */
  async withEdits(edits: readonly (readonly [sheet: string, at: string, value: number | string | null])[]): Promise<ReadSheet[]> {
    for (const [sheet, at, value] of edits) await this.engine.set(sheet, at, value);
    const sheets = await this.read();
    for (const [sheet, at] of edits) {
      const cell = this.plans.find(({ name }) => name === sheet)?.cells.find((one) => one.at === at);
      await this.engine.set(sheet, at, cell?.formula === undefined ? cell?.value ?? null : { formula: cell.formula });
    }
    return sheets;
  }

  /** The values as a file keeps them. */
  values(sheet: string): (at: string) => any {
    return (at) => this.engine.value(sheet, at);
  }
}

/** Address of a cell of a name, by its row and column in the range, both from 0. */
export function cellOf(sheets: readonly { readonly name: string; readonly names?: readonly { readonly name: string; readonly range: string }[] }[], sheet: string, name: string, row = 0, column = 0): string {
  const range = sheets.find((one) => one.name === sheet)?.names?.find((one) => one.name.toLowerCase() === name.toLowerCase())?.range;
  if (range === undefined) throw new Error(`no name ${name} on ${sheet}`);
  const first = placeOf(range.replaceAll('$', '').split(':')[0]);
  return address(first.column + column, first.row + row);
}

export function beside(at: string, columns: number, rows = 0): string {
  const { column, row } = placeOf(at);
  return address(column + columns, row + rows);
}

export function valueAt(sheets: readonly ReadSheet[], sheet: string, at: string): ReadValue {
  return sheets.find(({ name }) => name === sheet)?.cells.find((cell) => cell.at === at)?.value ?? null;
}

/** The same workbook with one cell otherwise, nothing recomputed. */
export function changed(sheets: readonly ReadSheet[], sheet: string, at: string, change: (cell: ReadCell) => Partial<ReadCell>): ReadSheet[] {
  if (!sheets.some(({ name, cells }) => name === sheet && cells.some((cell) => cell.at === at))) throw new Error(`no cell ${at} on ${sheet}`);
  return sheets.map((one) => (one.name !== sheet ? one : { ...one, cells: one.cells.map((cell) => (cell.at === at ? { ...cell, ...change(cell) } : cell)) }));
}

/** A stored value that no longer is what the formula gives. */
export function stale(change: (value: number) => ReadValue): (cell: ReadCell) => Partial<ReadCell> {
  return ({ value }) => ({ value: change(value as number) });
}

/** A constant in place of a formula: the value that stood there, or another. */
export function typed(value?: ReadValue): (cell: ReadCell) => Partial<ReadCell> {
  return (cell) => ({ value: value ?? cell.value, formula: undefined });
}
