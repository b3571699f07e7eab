import type { Cell, Cells } from './cells';
import { CellFault } from './faults';

/** Blank: an empty cell, an omitted argument, or a formula that gives "". */
export function isBlank(cell: Cell): boolean {
  return cell === null || cell === undefined || cell === '';
}

/** What was found, as the user sees it in the cell. */
export function describe(cell: Cell): string {
  if (isBlank(cell)) return 'nothing';
  if (typeof cell === 'string') return `the text "${cell.length > 40 ? `${cell.slice(0, 40)}…` : cell}"`;
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  if (cell instanceof CellFault) return cell.code;
  return String(cell);
}

/** The number in one cell of a range, or undefined if it is blank. Text, a boolean or a number past all range is an error. */
export function numberAt(cell: Cell, argument: string, row: number, column?: number): number | undefined {
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  if (isBlank(cell)) return undefined;
  const place = `${argument} row ${row}${column === undefined ? '' : `, column ${column + 1}`}`;
  throw new CellFault('#VALUE!', `${place}: found ${describe(cell)}; expected a number`);
}

/** A list of numbers from one row or one column of cells, blanks left out; each keeps its row for messages. */
export function readList(cells: Cells, argument: string): { row: number; value: number }[] {
  if (cells.length > 1 && cells[0].length > 1) {
    throw new CellFault('#VALUE!', `${argument}: found ${cells.length} rows and ${cells[0].length} columns; expected one row or one column`);
  }
  const list: { row: number; value: number }[] = [];
  const line = cells.length === 1 ? cells[0] : cells.map((row) => row[0]);
  line.forEach((cell, index) => {
    const value = numberAt(cell, argument, index + 1);
    if (value !== undefined) list.push({ row: index + 1, value });
  });
  return list;
}

/** A number argument; `fallback` stands in for one left out. */
export function readNumber(cell: Cell, argument: string, fallback?: number): number {
  if (isBlank(cell) && fallback !== undefined) return fallback;
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; expected a number`);
}

/** A number argument greater than zero. */
export function readPositive(cell: Cell, argument: string, fallback?: number): number {
  const value = readNumber(cell, argument, fallback);
  if (value > 0) return value;
  throw new CellFault('#VALUE!', `${argument}: found ${value}; expected a number greater than 0`);
}

/** A number argument other than zero: what is divided by. */
export function readNonZero(cell: Cell, argument: string): number {
  const value = readNumber(cell, argument);
  if (value !== 0) return value;
  throw new CellFault('#VALUE!', `${argument}: found 0; expected a number other than 0`);
}

/** A whole-number argument between two bounds, both allowed. */
export function readWhole(cell: Cell, argument: string, least: number, greatest: number, fallback?: number): number {
  const expected = `expected a whole number from ${least} to ${greatest}`;
  if (isBlank(cell) && fallback !== undefined) return fallback;
  if (typeof cell === 'number' && Number.isInteger(cell) && cell >= least && cell <= greatest) return cell;
  throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; ${expected}`);
}

/** A yes/no argument. */
export function readFlag(cell: Cell, argument: string, fallback: boolean): boolean {
  if (isBlank(cell)) return fallback;
  if (typeof cell === 'boolean') return cell;
  if (cell === 1 || cell === 0) return cell === 1;
  throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; expected TRUE or FALSE`);
}

/** An option given as a word, in any case; the first word is the default unless the argument has none. */
export function readWord<T extends string>(cell: Cell, argument: string, words: readonly T[], required = false): T {
  if (isBlank(cell) && !required) return words[0];
  const word = typeof cell === 'string' ? cell.trim().toLowerCase() : undefined;
  const found = words.find((candidate) => candidate.toLowerCase() === word);
  if (found !== undefined) return found;
  throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; expected ${quoted(words)}`);
}

function quoted(words: readonly string[]): string {
  const all = words.map((word) => `"${word}"`);
  return all.length === 1 ? all[0] : `${all.slice(0, -1).join(', ')} or ${all[all.length - 1]}`;
}
