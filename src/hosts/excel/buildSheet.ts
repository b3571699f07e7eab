import type { SheetPlan } from '../../worksheets/plan';
import { rangeOf } from '../address';
import { acceptedFoot } from '../excelLimits';
import { BASE_SIZE, FONT, INK } from '../roleLooks';
import { pageBreaks } from '../pageBreaks';
import { COLUMN_WIDTH, columnPixels, isLandscape, ROW_HEIGHT, rowHeights } from '../sheetLayout';
import type { CellBlock } from './cellBlock';
import { addCharts } from './charts';
import { addHighlights, addValidations } from './sheetRules';

/** Excel measures rows and columns in points. */
const POINTS_PER_PIXEL = 72 / 96;

/** Asks Excel to fill an empty sheet with all that a plan says. Nothing is carried out before the next sync. */
export function buildSheet(sheet: Excel.Worksheet, plan: SheetPlan, block: CellBlock): void {
  setFont(sheet);
  // Names come before the formulas that use them.
  for (const { name, range } of plan.names ?? []) sheet.names.add(name, sheet.getRange(range));
  fillCells(sheet, block);
  setSizes(sheet, plan, block);
  for (const merge of plan.merges ?? []) if (merge.includes(':')) sheet.getRange(merge).merge();
  if (plan.frozenRows) sheet.freezePanes.freezeRows(plan.frozenRows);
  addValidations(sheet, plan);
  addHighlights(sheet, plan);
  addCharts(sheet, plan);
  setPage(sheet.pageLayout, plan);
  for (const row of pageBreaks(plan)) sheet.horizontalPageBreaks.add(`A${row + 1}`);
  if (plan.locked) sheet.protection.protect({ allowFormatColumns: true, allowFormatRows: true });
}

function setFont(sheet: Excel.Worksheet): void {
  const { font } = sheet.getRange().format;
  font.name = FONT;
  font.size = BASE_SIZE;
  font.color = INK;
}

/** Values before formats: a text format would turn a formula into text. */
function fillCells(sheet: Excel.Worksheet, { entries, spills, numberFormats, properties }: CellBlock): void {
  const range = sheet.getRangeByIndexes(0, 0, entries.length, entries[0].length);
  range.formulas = entries;
  for (const { at, formula } of spills) sheet.getRange(at).formulas = [[formula]];
  range.numberFormat = numberFormats;
  range.setCellProperties(properties);
}

function setSizes(sheet: Excel.Worksheet, plan: SheetPlan, { entries }: CellBlock): void {
  const areas = [...(plan.charts ?? []).map(({ over }) => over), ...(plan.print ? [plan.print.area] : [])].map(rangeOf);
  const rows = Math.max(entries.length, ...areas.map(({ endRow }) => endRow + 1));
  const columns = Math.max(entries[0].length, plan.columns.length, ...areas.map(({ endColumn }) => endColumn + 1));
  const heights = rowHeights(plan);
  const range = sheet.getRangeByIndexes(0, 0, rows, columns);
  range.setRowProperties(Array.from({ length: rows }, (_, row) => ({ format: { rowHeight: (heights.get(row) ?? ROW_HEIGHT) * POINTS_PER_PIXEL } })));
  range.setColumnProperties(Array.from({ length: columns }, (_, column) => {
    const characters = plan.columns[column];
    return { format: { columnWidth: (characters === undefined ? COLUMN_WIDTH : columnPixels(characters)) * POINTS_PER_PIXEL } };
  }));
}

/** A4, one page wide, with what the plan says, or the sheet's name, and the page number at the foot. */
function setPage(page: Excel.PageLayout, plan: SheetPlan): void {
  page.paperSize = 'A4';
  page.orientation = isLandscape(plan) ? 'Landscape' : 'Portrait';
  page.zoom = { horizontalFitToPages: 1 };
  page.setPrintMargins('Inches', { left: 0.5, right: 0.5, top: 0.6, bottom: 0.6, header: 0.3, footer: 0.3 });
  const foot = page.headersFooters.defaultForAllPages;
  const { left, right } = acceptedFoot(plan.name, plan.print?.foot);
  foot.leftFooter = left;
  foot.rightFooter = right;
  if (!plan.print) return;
  page.setPrintArea(plan.print.area);
  const [first, last] = plan.print.repeatRows ?? [];
  if (first !== undefined && last !== undefined) page.setPrintTitleRows(`$${first}:$${last}`);
}
