import { counted } from '../metrology/wording';
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

/**
 * Where a cell stands in its range, as messages name it: "row 3", "column 2", or "row 3, column 2"; nothing in a single cell.
 * Rows and columns count from 0 here and from 1 in the message.
 */
export function placeIn(cells: Cells, row: number, column: number): string {
  const parts = [
    ...(cells.length > 1 ? [`row ${row + 1}`] : []),
    ...(cells[0].length > 1 ? [`column ${column + 1}`] : []),
  ];
  return parts.join(', ');
}

/** "readings row 3", or "readings" if it is one cell. */
export function named(argument: string, place: string): string {
  return place === '' ? argument : `${argument} ${place}`;
}

/** The number in one cell of a range, or undefined if it is blank. Text, a boolean or a number past all range is an error. */
export function numberAt(cells: Cells, row: number, column: number, argument: string): number | undefined {
  const cell = cells[row][column];
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  if (isBlank(cell)) return undefined;
  throw new CellFault('#VALUE!', `${named(argument, placeIn(cells, row, column))}: found ${describe(cell)}; expected a number`);
}

/** One entry of a list. */
export interface ListEntry {
  /** Where it stands in the range, as messages name it. */
  readonly place: string;
  /** Undefined if the cell is blank. */
  readonly value: number | undefined;
}

/** The numbers of one row or one column of cells, in order. */
export function readList(cells: Cells, argument: string): ListEntry[] {
  if (cells.length > 1 && cells[0].length > 1) {
    throw new CellFault('#VALUE!', `${argument}: found ${sizeOf(cells)}; expected one row or one column`);
  }
  return cells.flatMap((line, row) => line.map((_, column) => ({
    place: placeIn(cells, row, column),
    value: numberAt(cells, row, column, argument),
  })));
}

/** "3 rows and 1 column" */
export function sizeOf(cells: Cells): string {
  return `${counted(cells.length, 'row')} and ${counted(cells[0]?.length ?? 0, 'column')}`;
}

/**
 * Pairs of a list and another beside it; where both, or the second, are blank the pair is left out.
 * Errors: lengths that differ; a second value without a first.
 */
export function readPairs(first: Cells, second: Cells, names: readonly [string, string], noun: string): { place: string; first: number; second: number }[] {
  const firsts = readList(first, names[0]);
  const seconds = readList(second, names[1]);
  if (firsts.length !== seconds.length) {
    throw new CellFault('#VALUE!', `${names[0]} has ${counted(firsts.length, 'cell')} and ${names[1]} ${seconds.length}; expected the same number`);
  }
  return seconds.flatMap(({ place, value }, i) => {
    if (value === undefined) return [];
    const partner = firsts[i].value;
    if (partner === undefined) {
      throw new CellFault('#VALUE!', `${named(names[1], place)}: found ${value} without a ${noun}; expected one beside it`);
    }
    return [{ place, first: partner, second: value }];
  });
}

/** A number argument; `fallback` stands in for one left out. */
export function readNumber(cell: Cell, argument: string, fallback?: number): number {
  if (isBlank(cell) && fallback !== undefined) return fallback;
  if (typeof cell === 'number' && Number.isFinite(cell)) return cell;
  throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; expected a number`);
}

/** A number argument greater than zero. */
export function readPositive(cell: Cell, argument: string): number {
  const value = readNumber(cell, argument);
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
export function readWhole(cell: Cell, argument: string, least: number, greatest: number): number {
  if (typeof cell === 'number' && Number.isInteger(cell) && cell >= least && cell <= greatest) return cell;
  throw new CellFault('#VALUE!', `${argument}: found ${describe(cell)}; expected a whole number from ${least} to ${greatest}`);
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
