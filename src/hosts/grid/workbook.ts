import { BooleanNumber, type ICellData, type IColumnData, type IRowData, type IStyleData, type IWorkbookData, type IWorksheetData, LocaleType } from '@univerjs/core';
import type { PlanCell, SheetPlan } from '../../worksheets/plan';
import { toCellData } from './cellData';
import { placeOf, rangeOf } from '../address';
import { COLUMN_WIDTH, columnPixels, headLook, ROW_HEIGHT, rowHeights } from '../sheetLayout';
import { BASE_STYLE, roleStyle } from './roleStyles';
import { extrasOf } from './sheetExtras';
import { definedNames, NAMES } from './sheetNames';
import { highlightRules, validationRules } from './sheetRules';

/** Free room below and right of what a plan fills, for the user's own work. */
const SPARE_ROWS = 40;
const SPARE_COLUMNS = 8;
const LEAST_COLUMNS = 16;

/** What the grid calls the parts of a stored workbook beside its sheets. */
const VALIDATIONS = 'SHEET_DATA_VALIDATION_PLUGIN';
const HIGHLIGHTS = 'SHEET_CONDITIONAL_FORMATTING_PLUGIN';

/** A new workbook with one sheet a plan. The id tells workbooks apart while the page runs. */
export function workbookData(plans: readonly SheetPlan[], id: string): IWorkbookData {
  const styles = new StyleTable('r');
  const sheets = plans.map((plan, index) => sheetData(plan, `sheet-${index + 1}`, styles));
  return {
    id,
    name: 'Provingsheet',
    appVersion: '0.25.1',
    locale: LocaleType.EN_US,
    styles: styles.all,
    sheetOrder: sheets.map((sheet) => sheet.id),
    sheets: Object.fromEntries(sheets.map((sheet) => [sheet.id, sheet])),
    resources: resourcesOf(plans.map((plan, index) => [sheets[index].id, plan])),
  };
}

/** What the grid keeps of sheets beside their cells: names, and rules of what may be typed and how it looks. */
function resourcesOf(plans: readonly (readonly [sheetId: string, plan: SheetPlan])[]): NonNullable<IWorkbookData['resources']> {
  const names = plans.flatMap(([id, plan]) => definedNames(plan, id));
  const bySheet = (rules: (plan: SheetPlan, id: string) => readonly object[]): string =>
    JSON.stringify(Object.fromEntries(plans.map(([id, plan]) => [id, rules(plan, id)] as const).filter(([, found]) => found.length > 0)));
  return [
    { name: NAMES, data: JSON.stringify(Object.fromEntries(names.map((name) => [name.id, name]))) },
    { name: VALIDATIONS, data: bySheet(validationRules) },
    { name: HIGHLIGHTS, data: bySheet(highlightRules) },
  ];
}

/** Each distinct style once, by a short name. */
export class StyleTable {
  readonly all: Record<string, IStyleData> = {};
  private readonly names = new Map<string, string>();

  /** Names begin with `prefix`: those of one workbook must differ. */
  constructor(private readonly prefix: string) {}

  nameOf(style: IStyleData): string {
    const key = JSON.stringify(style);
    const known = this.names.get(key);
    if (known !== undefined) return known;
    const name = `${this.prefix}${this.names.size + 1}`;
    this.names.set(key, name);
    this.all[name] = style;
    return name;
  }
}

/** A plan as a sheet of the grid: cells, sizes, merges, and what it keeps beside them. Its styles go into the table. */
export function sheetData(plan: SheetPlan, id: string, styles: StyleTable): Partial<IWorksheetData> & { id: string } {
  const cellData: Record<number, Record<number, ICellData>> = {};
  const cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
  let lastRow = 0;
  let lastColumn = plan.columns.length - 1;
  for (const cell of plan.cells) {
    const { row, column } = placeOf(cell.at);
    (cellData[row] ??= {})[column] = { ...content(cell), s: styles.nameOf(roleStyle(cell, headLook(cell, cells))) };
    lastRow = Math.max(lastRow, row);
    lastColumn = Math.max(lastColumn, column);
  }
  const mergeData = (plan.merges ?? []).map(rangeOf);
  spreadMergedStyle(cellData, mergeData);
  for (const { over } of plan.charts ?? []) {
    const { endRow, endColumn } = rangeOf(over);
    lastRow = Math.max(lastRow, endRow);
    lastColumn = Math.max(lastColumn, endColumn);
  }
  const frozen = plan.frozenRows ?? 0;
  const custom = extrasOf(plan);
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
    ...(custom ? { custom } : {}),
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
