import { BooleanNumber, type ICellData, type IColumnData, type IRowData, type IStyleData, type IWorkbookData, type IWorksheetData, LocaleType } from '@univerjs/core';
import type { PlanCell, SheetPlan } from '../../worksheets/plan';
import { toCellData } from './cellData';
import { addressOf, placeOf, rangeOf } from './address';
import { BASE_STYLE, type HeadLook, isBold, roleStyle, sizeOf, wraps } from './roleStyles';
import { lineCount, linesHeight } from './textSize';

/** Free room below and right of what a plan fills, for the user's own work. */
const SPARE_ROWS = 40;
const SPARE_COLUMNS = 8;
const LEAST_COLUMNS = 16;
const ROW_HEIGHT = 22;
const COLUMN_WIDTH = 84;
const CHARACTER_WIDTH = 7.5;
const CELL_PADDING = 8;

/** A new workbook with one sheet a plan. The id tells workbooks apart while the page runs. */
export function workbookData(plans: readonly SheetPlan[], id: string): IWorkbookData {
  const styles = new StyleTable();
  const sheets = plans.map((plan, index) => sheetData(plan, `sheet-${index + 1}`, styles));
  return {
    id,
    name: 'Provingsheet',
    appVersion: '0.25.1',
    locale: LocaleType.EN_US,
    styles: styles.all,
    sheetOrder: sheets.map((sheet) => sheet.id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
  };
}

/** Each distinct style once, by a short name. */
class StyleTable {
  readonly all: Record<string, IStyleData> = {};
  private readonly names = new Map<string, string>();

  nameOf(style: IStyleData): string {
    const key = JSON.stringify(style);
    const known = this.names.get(key);
    if (known !== undefined) return known;
    const name = `r${this.names.size + 1}`;
    this.names.set(key, name);
    this.all[name] = style;
    return name;
  }
}

function sheetData(plan: SheetPlan, id: string, styles: StyleTable): Partial<IWorksheetData> & { id: string } {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
  let lastRow = 0;
  let lastColumn = plan.columns.length - 1;
  for (const cell of plan.cells) {
    const { row, column } = placeOf(cell.at);
    (cellData[row] ??= {})[column] = { ...content(cell), s: styles.nameOf(roleStyle(cell.role, cell.format, headLook(cell, cells))) };
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
  }
  const mergeData = (plan.merges ?? []).map(rangeOf);
  spreadMergedStyle(cellData, mergeData);
  const frozen = plan.frozenRows ?? 0;
  return {
    id,
    name: plan.name,
    rowCount: lastRow + 1 + SPARE_ROWS,
    columnCount: Math.max(LEAST_COLUMNS, lastColumn + 1 + SPARE_COLUMNS),
    defaultStyle: BASE_STYLE,
    defaultRowHeight: ROW_HEIGHT,
    defaultColumnWidth: COLUMN_WIDTH,
    columnData: columnWidths(plan),
    rowData: rowHeights(plan),
    mergeData,
    freeze: { xSplit: 0, ySplit: frozen, startRow: frozen > 0 ? frozen : -1, startColumn: -1 },
    showGridlines: BooleanNumber.TRUE,
    gridlinesColor: '#e6e8ea',
    cellData,
  };
}

function content({ formula, value }: PlanCell): ICellData {
  return toCellData(formula === undefined ? value : { formula }) ?? {};
}

/** A table head stands over its column: right over numbers and results, left over words. */
function headLook(cell: PlanCell, cells: ReadonlyMap<string, PlanCell>): HeadLook | undefined {
  if (cell.role !== 'header') return undefined;
  const { row, column } = placeOf(cell.at);
  const below = (steps: number): PlanCell | undefined => cells.get(addressOf({ row: row + steps, column }));
  let steps = 1;
  while (below(steps)?.role === 'header') steps += 1;
  const body = below(steps);
  const words = body?.role === 'label' || typeof body?.value === 'string';
  return { side: words ? 'left' : 'right', ruled: steps === 1 };
}

/** A merged block shows the fill and lines of its first cell all over. */
function spreadMergedStyle(cellData: Record<number, Record<number, ICellData>>, merges: IWorksheetData['mergeData']): void {
  for (const { startRow, startColumn, endRow, endColumn } of merges) {
    const style = cellData[startRow]?.[startColumn]?.s;
    if (!style) continue;
    for (let row = startRow; row <= endRow; row += 1) {
      for (let column = startColumn; column <= endColumn; column += 1) {
        (cellData[row] ??= {})[column] ??= { s: style };
      }
    }
  }
}

function pixels(characters: number): number {
  return Math.round(characters * CHARACTER_WIDTH + CELL_PADDING);
}

function columnWidths(plan: SheetPlan): Record<number, Partial<IColumnData>> {
  return Object.fromEntries(plan.columns.map((characters, index) => [index, { w: pixels(characters) }]));
}

/** Rows high enough for the whole text of every wrapped or large cell in them. */
function rowHeights(plan: SheetPlan): Record<number, Partial<IRowData>> {
  const merges = (plan.merges ?? []).map(rangeOf);
  const heights: Record<number, number> = {};
  const shared = new Set(plan.cells.filter(({ role }) => role !== 'heading').map(({ at }) => placeOf(at).row));
  for (const cell of plan.cells) {
    const { row, column } = placeOf(cell.at);
    const merge = merges.find((range) => range.startRow === row && range.startColumn === column);
    if (merge && merge.endRow > row) continue;
    const size = sizeOf(cell.role);
    const width = widthOf(plan, column, merge?.endColumn ?? column) - CELL_PADDING;
    const lines = wraps(cell.role) && typeof cell.value === 'string' ? lineCount(cell.value, width, size, isBold(cell.role)) : 1;
    // A heading stands off from what is above it, unless a table beside it goes on.
    const room = cell.role === 'heading' && !shared.has(row) ? 14 : 6;
    heights[row] = Math.max(heights[row] ?? ROW_HEIGHT, linesHeight(lines, size) + room);
  }
  return Object.fromEntries(Object.entries(heights).map(([row, height]) => [row, { h: height, ia: BooleanNumber.FALSE }]));
}

function widthOf(plan: SheetPlan, first: number, last: number): number {
  let width = 0;
  for (let column = first; column <= last; column += 1) {
    const characters = plan.columns[column];
    width += characters === undefined ? COLUMN_WIDTH : pixels(characters);
  }
  return width;
}
