import metadata from '@generated/functions.json';
import { MetrologyError } from '../metrology/errors';
import { catalogue } from './catalogue';
import type { Cell, CellResult, Cells, CellValue } from './cells';
import { CellFault } from './faults';
import { describe, named, placeIn, sizeOf } from './readCell';

/** An argument as a host hands it over: a cell, a range, or null if left out. */
export type Argument = Cell | Cells;

interface Parameter {
  readonly name: string;
  readonly optional?: boolean;
  readonly dimensionality?: string;
}

const parameters = new Map<string, readonly Parameter[]>(metadata.functions.map((entry) => [entry.id, entry.parameters]));

/**
 * Calls a cell function the way every host must: arguments shaped by its metadata, an error in an input cell passed on
 * as that error, any failure worded, and no NaN or Infinity let through.
 * @throws {CellFault} always of that class, with the error code and the message for the cell.
 */
export function callFunction(id: string, args: readonly Argument[]): CellResult {
  const expected = parameters.get(id);
  if (!expected) throw new CellFault('#NAME?', `there is no function PROVE.${id}`);
  try {
    if (args.length > expected.length) {
      throw new CellFault('#VALUE!', `found ${args.length} arguments; expected at most ${expected.length}`);
    }
    const shaped = expected.map((parameter, index) => shapeArgument(parameter, args[index]));
    return finite(catalogue[id](...shaped) as CellResult);
  } catch (error) {
    throw asFault(error, id);
  }
}

function shapeArgument(parameter: Parameter, argument: Argument): Argument {
  const isRange = parameter.dimensionality === 'matrix';
  const cells = squared(Array.isArray(argument) ? (argument as Cells) : [[argument as Cell]]);
  passOnFault(parameter.name, cells);
  if (isRange) {
    if (argument === null || argument === undefined) {
      if (parameter.optional) return null;
      throw new CellFault('#VALUE!', `${parameter.name}: found nothing; expected a range`);
    }
    return cells;
  }
  if (cells.length !== 1 || cells[0].length !== 1) {
    throw new CellFault('#VALUE!', `${parameter.name}: found ${sizeOf(cells)}; expected one cell`);
  }
  const cell = cells[0][0];
  if (!parameter.optional && (cell === null || cell === undefined || cell === '')) {
    throw new CellFault('#VALUE!', `${parameter.name}: found ${describe(cell)}; expected a value`);
  }
  return cell;
}

function passOnFault(name: string, cells: Cells): void {
  cells.forEach((line, row) => line.forEach((cell, column) => {
    if (!(cell instanceof CellFault)) return;
    const cause = cell.message ? ` (${cell.message})` : '';
    throw new CellFault(cell.code, `${named(name, placeIn(cells, row, column))}: the cell holds ${cell.code}${cause}`);
  }));
}

/** Hosts hand over rectangles; rows cut short are filled with blanks so that the functions need not ask. */
function squared(cells: Cells): Cells {
  const width = cells.reduce((most, row) => Math.max(most, row.length), 1);
  if (cells.length === 0) return [[null]];
  return cells.every((row) => row.length === width) ? cells : cells.map((row) => [...row, ...Array<Cell>(width - row.length).fill(null)]);
}

function finite(result: CellResult): CellResult {
  if (!Array.isArray(result)) return finiteCell(result);
  return result.map((row) => row.map((cell) => (cell instanceof CellFault ? cell : finiteCell(cell))));
}

function finiteCell(value: CellValue): CellValue {
  if (typeof value !== 'number') return value;
  if (!Number.isFinite(value)) {
    throw new CellFault('#VALUE!', 'the result is out of the range of numbers; expected forces and readings of an ordinary size');
  }
  return value === 0 ? 0 : value; // a cell knows no negative zero
}

function asFault(error: unknown, id: string): CellFault {
  if (error instanceof CellFault) return error;
  if (error instanceof MetrologyError) return new CellFault(error.kind === 'input' ? '#VALUE!' : '#N/A', error.message);
  const what = error instanceof Error ? error.message : String(error);
  return new CellFault('#VALUE!', `PROVE.${id} failed inside (${what}); please report it with the input that does this`);
}
