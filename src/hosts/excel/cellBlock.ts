import type { PlanCell, SheetPlan } from '../../worksheets/plan';
import { addressOf, type CellPlace, placeOf, rangeOf } from '../address';
import { headLook, ROW_HEIGHT, rowHeights } from '../sheetLayout';
import { cellProperties } from './cellProperties';
import { textEntry } from './textEntry';

/** The cells of a plan as one block from A1, row by row, so that Excel takes each kind of thing in one assignment. */
export interface CellBlock {
  /** What is typed into each cell; null leaves it alone. */
  readonly entries: (string | number | boolean | null)[][];
  /** Formulas that spill: each goes into its first cell by itself, and the cells it spills into are left alone. */
  readonly spills: readonly { readonly at: string; readonly formula: string }[];
  /** Number formats; null leaves them alone. */
  readonly numberFormats: (string | null)[][];
  /** Looks and locks; an empty object leaves them alone. */
  readonly properties: Excel.SettableCellProperties[][];
}

/** Lays out the cells of a plan. Throws, naming the cell, on what cannot be written. */
export function cellBlock(plan: SheetPlan): CellBlock {
  const cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
  const shown = shownCells(plan, cells);
  const heights = rowHeights(plan);
  const places = [...shown.keys()].map(placeOf);
  const rows = Math.max(1, ...places.map(({ row }) => row + 1));
  const columns = Math.max(1, ...places.map(({ column }) => column + 1));
  const matrix = <T>(fill: (at: string, row: number) => T): T[][] => Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => fill(addressOf({ row, column }), row)));
  checkSpills(plan, cells);
  return {
    entries: matrix((at) => entryOf(cells.get(at), plan.name)),
    spills: plan.cells.flatMap((cell) => (cell.formula !== undefined && spills(cell) ? [{ at: cell.at, formula: cell.formula }] : [])),
    // A formula may take over the format of what it refers to, so "General" is said too.
    numberFormats: matrix((at) => {
      const cell = shown.get(at);
      return cell ? cell.format ?? 'General' : null;
    }),
    properties: matrix((at, row) => {
      const cell = shown.get(at);
      return cell ? cellProperties(cell, { head: headLook(cell, cells), tall: (heights.get(row) ?? ROW_HEIGHT) > ROW_HEIGHT }) : {};
    }),
  };
}

/** Which cell gives each cell its look: itself; the source for what spills into an unplanned cell; the first of merged cells. */
function shownCells(plan: SheetPlan, cells: ReadonlyMap<string, PlanCell>): ReadonlyMap<string, PlanCell> {
  const shown = new Map(cells);
  for (const cell of plan.cells) {
    for (const at of spillArea(cell)) if (!cells.has(at)) shown.set(at, cell);
  }
  for (const merge of plan.merges ?? []) {
    const [first, ...others] = addressesIn(rangeOf(merge));
    const cell = cells.get(first);
    if (cell) for (const at of others) shown.set(at, cell);
  }
  return shown;
}

/** A cell that holds something where a formula spills turns the whole result to #SPILL!. */
function checkSpills(plan: SheetPlan, cells: ReadonlyMap<string, PlanCell>): void {
  for (const source of plan.cells) {
    for (const at of spillArea(source)) {
      const { value, formula } = cells.get(at) ?? {};
      const held = formula ?? value;
      if (at !== source.at && held !== undefined && held !== '') {
        throw new Error(`'${plan.name}'!${at}: found ${held}; expected a free cell, since the formula of ${source.at} spills into it`);
      }
    }
  }
}

function spills({ spill }: PlanCell): boolean {
  return spill !== undefined && spill.rows * spill.columns > 1;
}

function spillArea(cell: PlanCell): string[] {
  if (cell.formula === undefined || !cell.spill) return [];
  const { row, column } = placeOf(cell.at);
  return addressesIn({ startRow: row, startColumn: column, endRow: row + cell.spill.rows - 1, endColumn: column + cell.spill.columns - 1 });
}

function addressesIn({ startRow, startColumn, endRow, endColumn }: ReturnType<typeof rangeOf>): string[] {
  const places: CellPlace[] = [];
  for (let row = startRow; row <= endRow; row += 1) {
    for (let column = startColumn; column <= endColumn; column += 1) places.push({ row, column });
  }
  return places.map(addressOf);
}

function entryOf(cell: PlanCell | undefined, sheet: string): string | number | boolean | null {
  if (!cell || spills(cell)) return null;
  const { at, formula, value } = cell;
  if (formula !== undefined) return formula;
  if (value === undefined || value === '') return null;
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`'${sheet}'!${at}: found ${value}; expected a number that a cell can hold`);
  return typeof value === 'string' ? textEntry(value) : value;
}
