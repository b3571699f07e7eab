import { BooleanNumber, type ICellData, type IColumnData, type IRowData, type IStyleData, type IWorkbookData, type IWorksheetData, LocaleType } from '@univerjs/core';
import type { PlanCell, SheetPlan } from '../../worksheets/plan';
import { toCellData } from './cellData';
import { placeOf, rangeOf } from '../address';
import { COLUMN_WIDTH, columnPixels, headLook, ROW_HEIGHT, rowHeights } from '../sheetLayout';
import { BASE_STYLE, roleStyle } from './roleStyles';

/** Free room below and right of what a plan fills, for the user's own work. */
const SPARE_ROWS = 40;
const SPARE_COLUMNS = 8;
const LEAST_COLUMNS = 16;

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
    rowData: heightsOf(plan),
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

function columnWidths(plan: SheetPlan): Record<number, Partial<IColumnData>> {
  return Object.fromEntries(plan.columns.map((characters, index) => [index, { w: columnPixels(characters) }]));
}

function heightsOf(plan: SheetPlan): Record<number, Partial<IRowData>> {
  return Object.fromEntries([...rowHeights(plan)].map(([row, height]) => [row, { h: height, ia: BooleanNumber.FALSE }]));
}
