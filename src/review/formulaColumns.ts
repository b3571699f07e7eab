import { address, columnNumber } from '../worksheets/planBuilder';
import { found, held } from './finding';
import { placeOf, type ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';

/** Names of cells that hold a formula on every sheet of ours; of what spills, the first cell. */
const COMPUTED = /^(value|verdict|plain|net)_/;
/** Columns whose formulas are there to be typed over. */
const TYPED_OVER = /^(tolerances|temperatures|typed|readings|forces)_/;

/**
 * Where no plan of the sheet is known: results, verdicts and plain values without a formula, and single constants in a column
 * of like formulas.
 */
export function columnsOfFormulas(sheet: ReviewedSheet): ReviewFinding[] {
  const named = sheet.read.names.filter(({ name }) => COMPUTED.test(name.toLowerCase())).flatMap(({ name }): ReviewFinding[] => {
    const cell = sheet.cells.cell(name.toLowerCase());
    if (!cell || cell.formula !== undefined || cell.value === null) return [];
    return [found(sheet, cell, 'overwritten', `${cell.at} (${name}) holds ${held(cell.value, cell.format)}; expected a formula`)];
  });
  return [...named, ...gaps(sheet)];
}

/** A constant between two cells of a column whose formulas are the same but for the row. */
function gaps(sheet: ReviewedSheet): ReviewFinding[] {
  const free = new Set(sheet.read.names.filter(({ name }) => TYPED_OVER.test(name.toLowerCase())).flatMap(({ name }) => sheet.all(name.toLowerCase()).map(({ at }) => at)));
  const formulas = new Map(sheet.read.cells.flatMap(({ at, formula }) => (formula === undefined ? [] : [[at, formula] as const])));
  return sheet.read.cells.flatMap(({ at, value, formula, format }): ReviewFinding[] => {
    if (formula !== undefined || value === null || value === '' || free.has(at)) return [];
    const { column, row } = placeOf(at);
    const shape = (offset: number) => {
      const own = formulas.get(address(column, row + offset));
      return own === undefined ? undefined : inRow(own, row + offset);
    };
    const [above, below] = [shape(-1), shape(1)];
    if (above === undefined || above !== below || (shape(-2) !== above && shape(2) !== above)) return [];
    return [found(sheet, { at }, 'overwritten', `${at} holds ${held(value, format)} among cells with formulas; expected a formula like that of ${address(column, row - 1)}`)];
  });
}

/** A formula with the rows of its own sheet's relative references counted from its own. */
function inRow(formula: string, row: number): string {
  return formula.replace(/(?<![\w.$!])(\$?[A-Z]{1,3})(\$?)(\d{1,7})(?![\w(])/g, (whole, column: string, fixed: string, digits: string) => {
    if (fixed === '$' || columnNumber(column.replace('$', '')) > 16_384) return whole;
    return `${column}[${Number(digits) - row}]`;
  });
}
