/** A workbook as a stand-in for Excel keeps it: plain data, so that two states can be compared as a whole. */
import { addressOf, isInside, placeOf, rangeOf } from '../../../src/hosts/address';

export type Plain = number | string | boolean;
export type Shown = Plain | { readonly error: string } | null;

/** What a formula gives: rows of values. */
export type Results = ReadonlyMap<string, readonly (readonly Shown[])[]>;

export interface FakeCell {
  formula?: string;
  value?: Plain | { readonly error: string };
  /** True if the text was typed with an apostrophe before it. */
  quoted?: boolean;
  numberFormat?: string;
  properties?: Record<string, unknown>;
}

export interface FakeSheet {
  readonly id: string;
  name: string;
  visibility: string;
  readonly cells: Record<string, FakeCell>;
  readonly merges: string[];
  readonly names: { name: string; range: string; visible: boolean }[];
  readonly rows: Record<string, unknown>;
  readonly columns: Record<string, unknown>;
  readonly validations: Record<string, Record<string, unknown>>;
  readonly highlights: { range: string; type: string; custom: Record<string, unknown> }[];
  readonly charts: { type: string; by: string; place?: string; props: Record<string, unknown>; series: Record<string, unknown>[] }[];
  readonly page: Record<string, unknown>;
  /** Cells above which a page begins. */
  readonly pageBreaks: string[];
  readonly font: Record<string, unknown>;
  frozenRows: number;
  selection: string;
  protection?: Record<string, unknown>;
}

export interface FakeWorkbook {
  readonly sheets: FakeSheet[];
  /** The id of the sheet that is shown. */
  active: string;
}

/** The error with which Office refuses a call. */
export function refusal(code: string, errorLocation = ''): Error {
  return Object.assign(new Error(`inner detail of ${code}`), { code, debugInfo: { errorLocation } });
}

export function emptySheet(id: string, name: string): FakeSheet {
  return {
    id, name, visibility: 'Visible', cells: {}, merges: [], names: [], rows: {}, columns: {}, validations: {}, highlights: [], charts: [],
    page: {}, pageBreaks: [], font: {}, frozenRows: 0, selection: 'A1',
  };
}

export function cellAt(sheet: FakeSheet, at: string): FakeCell {
  sheet.cells[at] ??= {};
  return sheet.cells[at];
}

/** Types something into a cell, as Excel reads what is typed. */
export function typeInto(sheet: FakeSheet, at: string, typed: unknown): void {
  const cell = cellAt(sheet, at);
  delete cell.formula;
  delete cell.value;
  delete cell.quoted;
  if (typed === '') return;
  if (typeof typed !== 'string') cell.value = typed as Plain;
  else if (cell.numberFormat === '@') cell.value = typed;
  else if (typed.startsWith("'")) Object.assign(cell, { value: typed.slice(1), quoted: true });
  else if (/^[=+\-@]/.test(typed)) cell.formula = typed.replace(/^[+@-]/, (sign) => `=${sign}`);
  else cell.value = guessed(typed);
}

/** Excel guesses at text that looks like something else. */
function guessed(typed: string): FakeCell['value'] {
  const text = typed.trim();
  if (/^(true|false)$/i.test(text)) return text.toUpperCase() === 'TRUE';
  if (/^#(N\/A|VALUE!|REF!|DIV\/0!|NUM!|NAME\?|NULL!)$/.test(text)) return { error: text };
  if (/^[$€(]?[\d.,]+(e[+-]?\d+)?\)?\s*%?$/i.test(text)) return parseFloat(text.replace(/[$€(,]/g, ''));
  if (/^(\d+[/:-]\d+([/:-]\d+)?|[a-z]{3,9}\.? \d{1,4}|\d{1,2}[ -][a-z]{3,9}([ -]\d+)?)$/i.test(text)) return 45000;
  return typed;
}

/** What a cell shows, its own or spilled into it; null if blank. */
export function shownAt(sheet: FakeSheet, at: string, results: Results): Shown {
  const cell = sheet.cells[at];
  if (cell?.formula !== undefined) {
    const result = results.get(cell.formula);
    if (!result) return { error: '#NAME?' };
    return isBlocked(sheet, at, result) ? { error: '#SPILL!' } : result[0][0] ?? 0;
  }
  if (cell?.value !== undefined) return cell.value;
  for (const [source, { formula }] of Object.entries(sheet.cells)) {
    const result = formula === undefined ? undefined : results.get(formula);
    if (!result || result.length * result[0].length === 1) continue;
    if (!isInside(placeOf(at), areaOf(source, result)) || isBlocked(sheet, source, result)) continue;
    const [from, to] = [placeOf(source), placeOf(at)];
    return result[to.row - from.row][to.column - from.column];
  }
  return null;
}

/** The cell whose result of several cells reaches a cell. */
export function spillParentOf(sheet: FakeSheet, at: string, results: Results): string | undefined {
  return Object.keys(sheet.cells).find((source) => {
    const { formula } = sheet.cells[source];
    const result = formula === undefined ? undefined : results.get(formula);
    return result && result.length * result[0].length > 1 && isInside(placeOf(at), areaOf(source, result)) && !isBlocked(sheet, source, result);
  });
}

function areaOf(at: string, result: readonly (readonly Shown[])[]): ReturnType<typeof rangeOf> {
  const { row, column } = placeOf(at);
  return rangeOf(`${at}:${addressOf({ row: row + result.length - 1, column: column + result[0].length - 1 })}`);
}

/** A result spills only into free cells that are not merged. */
function isBlocked(sheet: FakeSheet, source: string, result: readonly (readonly Shown[])[]): boolean {
  if (result.length * result[0].length === 1) return false;
  return addressesIn(areaOf(source, result)).some((at) => {
    const held = at !== source && (sheet.cells[at]?.formula ?? sheet.cells[at]?.value) !== undefined;
    return held || sheet.merges.some((merge) => isInside(placeOf(at), rangeOf(merge)));
  });
}

export function addressesIn({ startRow, endRow, startColumn, endColumn }: ReturnType<typeof rangeOf>): string[] {
  const found: string[] = [];
  for (let row = startRow; row <= endRow; row += 1) {
    for (let column = startColumn; column <= endColumn; column += 1) found.push(addressOf({ row, column }));
  }
  return found;
}

/** The smallest range that holds every cell that shows something, as rows and columns from 0. */
export function usedArea(sheet: FakeSheet, results: Results): ReturnType<typeof rangeOf> | undefined {
  const held = Object.entries(sheet.cells).flatMap(([at, { formula, value }]) => {
    if (formula === undefined) return value === undefined ? [] : [placeOf(at)];
    return addressesIn(areaOf(at, results.get(formula) ?? [[null]])).map(placeOf);
  });
  if (held.length === 0) return undefined;
  const rows = held.map(({ row }) => row);
  const columns = held.map(({ column }) => column);
  return { startRow: Math.min(...rows), endRow: Math.max(...rows), startColumn: Math.min(...columns), endColumn: Math.max(...columns) };
}
