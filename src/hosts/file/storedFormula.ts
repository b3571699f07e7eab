import type { SheetPlan } from '../../worksheets/plan';
import { addressOf, placeOf } from '../address';

/** Text in quotes and quoted sheet names: nothing in there is a call. */
const QUOTED = /("(?:[^"]|"")*"|'(?:[^']|'')*')/;

/** Changes a formula outside of its quoted parts. */
function outsideQuotes(formula: string, change: (code: string) => string): string {
  return formula.split(QUOTED).map((part, i) => (i % 2 === 1 ? part : change(part))).join('');
}

/**
 * A formula as a workbook file keeps it: `PROVE.FIT(` becomes `_xldudf_PROVE_FIT(`; otherwise Excel shows #NAME? for ever.
 * The prefixes of newer built-in functions are the writing library's part.
 * Throws on what would need marks within the formula that nothing here makes: names of LET and LAMBDA, and references like A1#.
 */
export function toStored(formula: string): string {
  return outsideQuotes(formula, (code) => {
    const found = /\b(?:LET|LAMBDA)(?=\s*\()|\$?[A-Z]{1,3}\$?\d+#/i.exec(code);
    if (found) throw new Error(`found ${found[0]}; a workbook file takes formulas without LET, LAMBDA and references like A1#`);
    return code.replace(/\bPROVE\.([A-Z.]+)(?=\()/gi, (_, id: string) => `_xldudf_PROVE_${id.toUpperCase().replaceAll('.', '_')}`);
  });
}

/** The formula as a user types it, with its leading "=". */
export function fromStored(stored: string): string {
  return `=${outsideQuotes(stored, (code) =>
    code
      .replace(/_xldudf_PROVE_([A-Z_]+)(?=\()/g, (_, id: string) => `PROVE.${id.replaceAll('_', '.')}`)
      .replace(/_xlfn\.(?:_xlws\.)?|_xlpm\./g, ''))}`;
}

/** Whether a formula, as typed or as a file keeps it, calls a cell function. */
export function callsCellFunction(formula: string): boolean {
  return formula.split(QUOTED).some((part, i) => i % 2 === 0 && /(?:_xldudf_PROVE_|(?<![\w.])PROVE\.)[\w.]+\s*\(/i.test(part));
}

/** A reference to a cell: its column and row, each relative without a "$" before it. */
const REFERENCE = /(?<![\w.$])(\$?)([A-Z]{1,3})(\$?)([1-9]\d*)(?![\w.(])/g;

/** A formula as it reads so many rows further down and columns further right: relative references move along. */
export function moved(formula: string, down: number, right: number): string {
  return outsideQuotes(formula, (code) => code.replace(REFERENCE, (_, fixedColumn: string, letters: string, fixedRow: string, digits: string) => {
    const { row, column } = placeOf(letters + digits);
    const at = addressOf({ row: fixedRow ? row : row + down, column: fixedColumn ? column : column + right });
    return fixedColumn + at.replace(/^[A-Z]+/, (found) => found + fixedRow);
  }));
}

/** Built-in functions that take a whole range as such and give one value. */
const TAKE_RANGES = new Set([
  'SUM', 'SUMSQ', 'SUMPRODUCT', 'SUMIF', 'COUNT', 'COUNTA', 'COUNTBLANK', 'COUNTIF', 'COUNTIFS', 'AVERAGE', 'MEDIAN', 'MIN', 'MAX',
  'STDEV.S', 'VAR.S', 'DEVSQ', 'SLOPE', 'INTERCEPT', 'STEYX', 'RSQ', 'CORREL', 'INDEX', 'MATCH', 'VLOOKUP', 'ROWS', 'COLUMNS', 'AND', 'OR',
]);

/** A call's name, a bracket or comma, a range, an array constant, or a name. */
const TOKEN = /[A-Z_][\w.]*(?=\()|[(),{]|\$?[A-Z]{1,3}\$?\d+:\$?[A-Z]{1,3}\$?\d+|\$?[A-Z_][\w.$]*|\S/gi;

/**
 * Whether a formula must be stored as a dynamic array to mean what it means when typed: a plain one takes a single cell of
 * each range that stands where one value is expected. True for custom functions, which Excel stores only so.
 */
export function needsArray(formula: string, plan: Pick<SheetPlan, 'names'>): boolean {
  if (/\bPROVE\./i.test(formula)) return true;
  const names = new Set((plan.names ?? []).filter(({ range }) => range.includes(':')).map(({ name }) => name.toUpperCase()));
  const tokens = formula.split(QUOTED).map((part, i) => (i % 2 === 1 ? 'quoted' : part)).join('').replace(/^=/, '').match(TOKEN) ?? [];
  const callers: string[] = [];
  for (const [i, token] of tokens.entries()) {
    if (token === '{') return true;
    if (token === '(') callers.push(/^[A-Z_]/i.test(tokens[i - 1] ?? '') ? tokens[i - 1].toUpperCase() : '');
    if (token === ')') callers.pop();
    const isRange = token.includes(':') || names.has(token.toUpperCase());
    if (isRange && !isWholeArgument(tokens[i - 1], tokens[i + 1], callers.at(-1))) return true;
  }
  return false;
}

function isWholeArgument(before: string | undefined, after: string | undefined, caller: string | undefined): boolean {
  return (before === '(' || before === ',') && (after === ')' || after === ',') && caller !== undefined && TAKE_RANGES.has(caller);
}
