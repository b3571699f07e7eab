import { columnNumber } from '../../worksheets/planBuilder';
import type { PlanCell, SheetPlan } from '../../worksheets/plan';

/** A cell of a planned sheet with the columns and rows it covers. */
export interface GridCell {
  readonly cell?: PlanCell;
  readonly columns: number;
  readonly rows: number;
}

/** A part of a planned sheet as rows of cells; what a merged cell covers is left out. */
export interface PlanGrid {
  readonly columns: readonly number[];
  readonly rows: readonly { readonly number: number; readonly cells: readonly GridCell[] }[];
  /** Rows of the plan below the last one here. */
  readonly more: number;
}

interface Place {
  readonly row: number;
  readonly column: number;
}

/** Lays out at most `most` rows, from the heading of the first table on. */
export function planGrid(plan: SheetPlan, most: number): PlanGrid {
  const cells = new Map(plan.cells.map((cell) => [key(placeOf(cell.at)), cell]));
  const places = plan.cells.map(({ at }) => placeOf(at));
  const lastRow = Math.max(0, ...places.map(({ row }) => row));
  const width = Math.max(plan.columns.length, ...places.map(({ column }) => column));
  const first = firstTable(plan);
  const last = Math.min(lastRow, first + most - 1);
  const spans = spansOf(plan, width, last);
  const rows = range(first, last).map((row) => ({
    number: row,
    cells: range(1, width)
      .filter((column) => !spans.covered.has(key({ row, column })))
      .map((column) => ({ cell: cells.get(key({ row, column })), ...(spans.sizes.get(key({ row, column })) ?? { columns: 1, rows: 1 }) })),
  }));
  return { columns: range(1, width).map((column) => plan.columns[column - 1] ?? 8), rows, more: lastRow - last };
}

/** The row of the first line of headers that is several cells wide, or of the heading right above it; 1 if there is none. */
function firstTable({ cells }: SheetPlan): number {
  const count = new Map<number, number>();
  for (const { at, role } of cells) if (role === 'header') count.set(placeOf(at).row, (count.get(placeOf(at).row) ?? 0) + 1);
  const header = Math.min(...[...count].filter(([, many]) => many >= 2).map(([row]) => row));
  if (!Number.isFinite(header)) return 1;
  return cells.some(({ at, role }) => role === 'heading' && placeOf(at).row === header - 1) ? header - 1 : header;
}

function spansOf({ merges = [] }: SheetPlan, width: number, lastRow: number) {
  const sizes = new Map<string, { columns: number; rows: number }>();
  const covered = new Set<string>();
  for (const merge of merges) {
    const [from, to = from] = merge.split(':');
    const start = placeOf(from);
    const end = { row: Math.min(placeOf(to).row, lastRow), column: Math.min(placeOf(to).column, width) };
    for (const row of range(start.row, end.row)) for (const column of range(start.column, end.column)) covered.add(key({ row, column }));
    covered.delete(key(start));
    sizes.set(key(start), { columns: end.column - start.column + 1, rows: end.row - start.row + 1 });
  }
  return { sizes, covered };
}

/** Row and column from 1. */
function placeOf(at: string): Place {
  const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(at) ?? ['', 'A', '1'];
  return { row: Number(digits), column: columnNumber(letters) };
}

function key({ row, column }: Place): string {
  return `${row} ${column}`;
}

function range(first: number, last: number): number[] {
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => first + i);
}
