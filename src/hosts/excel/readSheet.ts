import type { PlanName } from '../../worksheets/plan';
import { addressOf } from '../address';
import type { CellContent, CellValue, SheetContent } from '../sheetHost';
import { sameName } from './rollBack';

/** Names that Excel makes itself, for printing and filtering. */
const OWN_NAMES = /^(_xlnm\.|_FilterDatabase$|Print_Area$|Print_Titles$)/i;

/** Reads a sheet in one sync. Merged cells can be read from ExcelApi 1.13 on; before it, none are told. */
export async function readSheet(context: Excel.RequestContext, name: string, canReadMerges: boolean): Promise<SheetContent> {
  const sheet = context.workbook.worksheets.getItem(name);
  sheet.load('name');
  const used = sheet.getUsedRangeOrNullObject(true);
  used.load('rowIndex,columnIndex,formulas,values,valueTypes,numberFormat');
  const { names } = sheet;
  names.load('items/name,items/formula,items/type,items/visible');
  const merged = canReadMerges ? sheet.getRange().getMergedAreasOrNullObject() : undefined;
  merged?.load('address');
  await context.sync();
  return {
    name: sheet.name,
    cells: used.isNullObject ? [] : cellsOf(used),
    merges: !merged || merged.isNullObject ? [] : rangesOf(merged.address),
    names: names.items.flatMap((item) => nameOf(item, sheet.name)),
  };
}

function cellsOf({ rowIndex, columnIndex, formulas, values, valueTypes, numberFormat }: Excel.Range): CellContent[] {
  return formulas.flatMap((row: unknown[], i) => row.flatMap((formula, j): CellContent[] => {
    const typed = isFormula(formula, values[i][j]);
    const type = valueTypes[i][j];
    if (type === 'Empty' && !typed) return [];
    const format: unknown = numberFormat[i][j];
    return [{
      at: addressOf({ row: rowIndex + i, column: columnIndex + j }),
      value: valueOf(values[i][j], type),
      ...(typed && { formula }),
      ...(typeof format === 'string' && format !== 'General' && { format }),
    }];
  }));
}

/** A cell without a formula gives its value as formula; so does text that begins with "=". */
function isFormula(formula: unknown, value: unknown): formula is string {
  return typeof formula === 'string' && formula.startsWith('=') && formula !== value;
}

function valueOf(value: unknown, type: Excel.RangeValueType): CellValue {
  if (type === 'Empty') return null;
  if (type === 'Error') return { error: String(value) };
  return typeof value === 'number' || typeof value === 'boolean' ? value : String(value);
}

/** "'My sheet'!A1:B1, 'My sheet'!A2:B2" → the ranges. */
function rangesOf(address: string): string[] {
  return address.replace(/'(?:[^']|'')*'!/g, '').split(',').map((part) => part.slice(part.lastIndexOf('!') + 1).trim());
}

function nameOf({ name, formula, type, visible }: Excel.NamedItem, sheet: string): PlanName[] {
  const reference = /^=(?:'((?:[^']|'')*)'|([^'!]+))!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)$/.exec(String(formula));
  if (type !== 'Range' || !visible || OWN_NAMES.test(name) || !reference) return [];
  const owner = reference[1]?.replaceAll("''", "'") ?? reference[2];
  return sameName(owner, sheet) ? [{ name, range: reference[3].replaceAll('$', '') }] : [];
}
