import { type IRange, type ISheetDataValidationRule, isDefaultFormat, DataValidationType, type Worksheet } from '@univerjs/core';
import { DataValidationModel } from '@univerjs/data-validation';
import { FormulaDataModel } from '@univerjs/engine-formula';
import { ConditionalFormattingRuleModel } from '@univerjs/sheets-conditional-formatting';
import type { Highlight, PlanCell, SheetPlan, Validation } from '../../worksheets/plan';
import { addressOf, type CellPlace, isInside } from '../address';
import { BOUNDLESS } from '../excelLimits';
import { moved } from '../file/storedFormula';
import { HIGHLIGHT_LOOKS } from '../roleLooks';
import { columnCharacters, linesIn } from '../sheetLayout';
import { CellReader, type OpenWorkbook } from './cellReader';
import { namesOf } from './localNames';
import { constantOf } from './readSheet';
import { roleOfLook, wrapsByItself } from './rolesByLook';
import { readExtras } from './sheetExtras';
import { planName } from './sheetNames';

/**
 * A sheet of the grid as a plan, as it stands now: what a person typed, moved or formatted is in it. What a plan has no word
 * for, like a colour of the person's own, is left out.
 */
export function planOf(grid: OpenWorkbook, sheet: Worksheet): SheetPlan {
  const { open, charts, print } = readExtras(sheet);
  const merges = sheet.getMergeData();
  const { startRow: frozenRows } = sheet.getFreeze();
  const [unitId, sheetId] = [sheet.getUnitId(), sheet.getSheetId()];
  const names = namesOf(grid.injector, unitId, sheetId).flatMap((name) => planName(name) ?? []);
  const validations = grid.injector.get(DataValidationModel).getRules(unitId, sheetId).flatMap((rule) => validationsOf(rule as ISheetDataValidationRule));
  const highlights = (grid.injector.get(ConditionalFormattingRuleModel).getSubunitRules(unitId, sheetId) ?? []).flatMap(highlightsOf);
  return {
    name: sheet.getName(),
    columns: columnsOf(sheet),
    cells: cellsOf(grid, sheet, merges, open && new Set(open)),
    ...(merges.length > 0 && { merges: merges.map(rangeText) }),
    ...(frozenRows > 0 && { frozenRows }),
    ...(names.length > 0 && { names }),
    ...(validations.length > 0 && { validations }),
    ...(highlights.length > 0 && { highlights }),
    ...(charts && { charts }),
    ...(open && { locked: true }),
    ...(print && { print }),
  };
}

/** Widths up to the last column of which one is said. */
function columnsOf(sheet: Worksheet): number[] {
  const said = Object.entries(sheet.getConfig().columnData).filter(([, column]) => column?.w !== undefined).map(([index]) => Number(index));
  return Array.from({ length: Math.max(-1, ...said) + 1 }, (_, column) => columnCharacters(sheet.getColumnWidth(column)));
}

/** The cells that hold something or have a look; those that a merged block covers show nothing. */
function cellsOf(grid: OpenWorkbook, sheet: Worksheet, merges: readonly IRange[], open: ReadonlySet<string> | undefined): PlanCell[] {
  const reader = new CellReader(grid);
  const styles = grid.workbook().getStyles();
  const spills = grid.injector.get(FormulaDataModel).getArrayFormulaRange()[sheet.getUnitId()]?.[sheet.getSheetId()];
  const found: PlanCell[] = [];
  sheet.getCellMatrix().forValue((row, column, cell) => {
    const place = { row, column };
    if (!cell || isCovered(place, merges)) return undefined;
    const at = addressOf(place);
    const style = styles.getStyleByCell(cell) ?? undefined;
    const role = roleOfLook(style);
    const formula = reader.ownFormula(sheet.getSheetId(), place);
    const value = formula === undefined ? constantOf(cell) : undefined;
    if (formula === undefined && value === undefined && !style) return undefined;
    const format = style?.n?.pattern;
    const spill = formula === undefined ? undefined : sizeOf(spills?.[row]?.[column] as IRange | undefined);
    found.push({
      at,
      role: open?.has(at) ? 'input' : open && role === 'input' ? 'label' : role,
      ...(formula !== undefined && { formula }),
      ...(value !== undefined && { value }),
      ...(spill && { spill }),
      ...(format && !isDefaultFormat(format) && { format }),
      ...(wrapsByItself(role, style) && { lines: linesIn(sheet.getRowHeight(row)) }),
    });
    return undefined;
  });
  return found;
}

function isCovered(place: CellPlace, merges: readonly IRange[]): boolean {
  return merges.some((merge) => isInside(place, merge) && (merge.startRow !== place.row || merge.startColumn !== place.column));
}

/** Rows and columns that a formula spills over now, if more than its own cell. */
function sizeOf(range: IRange | undefined): PlanCell['spill'] {
  if (!range) return undefined;
  const rows = range.endRow - range.startRow + 1;
  const columns = range.endColumn - range.startColumn + 1;
  return rows * columns > 1 ? { rows, columns } : undefined;
}

/** A rule of what may be typed; the grid may hold it for several ranges, once cells were moved. */
function validationsOf({ ranges, error = '', ...condition }: ISheetDataValidationRule): Validation[] {
  const rule = ruleOf(condition);
  return rule ? ranges.map((range) => ({ range: rangeText(range), rule, message: error })) : [];
}

function ruleOf({ type, formula1 = '', formula2 = '' }: Pick<ISheetDataValidationRule, 'type' | 'formula1' | 'formula2'>): Validation['rule'] | undefined {
  const [least, greatest] = [Number(formula1), Number(formula2)];
  switch (type) {
    case DataValidationType.DECIMAL:
      return { kind: 'number', ...(least > -BOUNDLESS && { least }), ...(greatest < BOUNDLESS && { greatest }) };
    case DataValidationType.WHOLE: return { kind: 'whole', least, greatest };
    case DataValidationType.DATE: return { kind: 'date' };
    case DataValidationType.LIST: return { kind: 'list', words: formula1.split(',') };
    default: return undefined;
  }
}

type HighlightRule = NonNullable<ReturnType<ConditionalFormattingRuleModel['getSubunitRules']>>[number];

/** A look that depends on a formula; relative references are from the first cell of the first range. */
function highlightsOf({ ranges, rule }: HighlightRule): Highlight[] {
  const { value, style } = rule as { value?: unknown; style?: { bg?: { rgb?: string | null } } };
  const look = (Object.keys(HIGHLIGHT_LOOKS) as Highlight['look'][]).find((known) => HIGHLIGHT_LOOKS[known].fill === style?.bg?.rgb);
  if (typeof value !== 'string' || !look) return [];
  const [first] = ranges;
  return ranges.map((range) => ({
    range: rangeText(range), look, formula: moved(value, range.startRow - first.startRow, range.startColumn - first.startColumn),
  }));
}

function rangeText({ startRow, startColumn, endRow, endColumn }: IRange): string {
  const [first, last] = [addressOf({ row: startRow, column: startColumn }), addressOf({ row: endRow, column: endColumn })];
  return first === last ? first : `${first}:${last}`;
}
