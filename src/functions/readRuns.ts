import type { Point, Run } from '../metrology/run';
import { counted } from '../metrology/wording';
import type { Cells } from './cells';
import { CellFault } from './faults';
import { describe, named, numberAt, placeIn } from './readCell';

/** Runs read from two ranges, and the shape to give results back in. */
export interface RunBlock {
  readonly runs: readonly Run[];
  /** Rows of the readings range, blank ones included (columns, if the block lies on its side). */
  readonly rows: number;
  /** True if a run is a row of the range rather than a column. */
  readonly sideways: boolean;
  /** Where each run's greatest force stands, and whether its reading is missing. */
  readonly greatest: readonly Place[];
}

interface Place {
  readonly place: string;
  readonly missing?: boolean;
}

/**
 * Reads `forces` (one list for all runs, or one a run) and `readings` (a column a run) into runs.
 * Rows blank in both are skipped; a force with a blank reading is skipped for that run.
 * Errors name the row: text, booleans, a reading without a force, lengths that differ, directions that mix.
 */
export function readRuns(forces: Cells, readings: Cells): RunBlock {
  const { forceAt, forcePlaceOf, readingAt, placeOf, rows, runs: count, sideways } = upright(forces, readings);
  const direction = new DirectionGuard();
  const runs: Run[] = [];
  const greatest: Place[] = [];
  for (let run = 0; run < count; run += 1) {
    const points: Point[] = [];
    let top: Place & { force: number } = { force: 0, place: '' };
    let order = 0;
    for (let row = 0; row < rows; row += 1) {
      const signed = forceAt(row, run);
      const reading = readingAt(row, run);
      const place = placeOf(row, run);
      if (signed === undefined && reading !== undefined) {
        throw new CellFault('#VALUE!', `${named('readings', place)}: found the reading ${reading} without a force; expected a force beside it`);
      }
      if (signed === undefined) continue;
      direction.check(signed, forcePlaceOf(row, run));
      const force = toFifteenDigits(Math.abs(signed));
      if (force > top.force) top = { force, place, missing: reading === undefined };
      order += 1;
      if (reading !== undefined) points.push({ row: row + 1, order, force, reading, place });
    }
    runs.push(points);
    greatest.push(top);
  }
  if (runs.every((run) => run.length === 0)) {
    throw new CellFault('#VALUE!', 'readings: no row holds both a force and a reading');
  }
  return { runs, rows, sideways, greatest };
}

/** A spreadsheet shows and compares 15 digits: 0.1·3 is then the 0.3 that stands elsewhere. */
function toFifteenDigits(force: number): number {
  return Number(force.toPrecision(15));
}

/** The two ranges as runs side by side, whichever way they lie. */
function upright(forces: Cells, readings: Cells) {
  const flat = forces.length === 1 && forces[0].length > 1;
  const sideways = flat && !(readings[0].length === 1 && readings.length === forces[0].length);
  const [rows, runs] = sideways ? [readings[0].length, readings.length] : [readings.length, readings[0].length];
  const [steps, series] = flat ? [forces[0].length, 1] : [forces.length, forces[0].length];
  if (steps !== rows) {
    throw new CellFault('#VALUE!', `forces has ${counted(steps, flat ? 'column' : 'row')} and readings ${rows}; expected the same number`);
  }
  if (series !== 1 && series !== runs) {
    throw new CellFault('#VALUE!', `forces has ${series} columns; expected 1, or one for each of the ${counted(runs, 'run')} of readings`);
  }
  const at = (row: number, run: number): [number, number] => (sideways ? [run, row] : [row, run]);
  const forceIn = (row: number, run: number): [number, number] => (flat ? [0, row] : [row, series === 1 ? 0 : run]);
  return {
    rows, runs, sideways,
    forceAt: (row: number, run: number) => numberAt(forces, ...forceIn(row, run), 'forces'),
    forcePlaceOf: (row: number, run: number) => placeIn(forces, ...forceIn(row, run)),
    readingAt: (row: number, run: number) => numberAt(readings, ...at(row, run), 'readings'),
    placeOf: (row: number, run: number) => placeIn(readings, ...at(row, run)),
  };
}

/** Tension is positive, compression negative; one block holds one of the two. */
class DirectionGuard {
  private first = 0;
  private firstPlace = '';

  check(force: number, place: string): void {
    if (force === 0) return;
    if (this.first === 0) {
      this.first = force;
      this.firstPlace = place;
    } else if (Math.sign(force) !== Math.sign(this.first)) {
      throw new CellFault(
        '#VALUE!',
        `${named('forces', place)}: found ${describe(force)}, but ${this.firstPlace} holds ${describe(this.first)}; ` +
          'expected one direction (give tension and compression a range each)',
      );
    }
  }
}

/** |force| of each cell of a block of one direction; blanks are undefined. */
export function magnitudes(forces: Cells): (number | undefined)[][] {
  const direction = new DirectionGuard();
  return forces.map((line, i) => line.map((_, j) => {
    const force = numberAt(forces, i, j, 'forces');
    if (force !== undefined) direction.check(force, placeIn(forces, i, j));
    return force === undefined ? undefined : Math.abs(force);
  }));
}

/**
 * A block shaped like the readings range: one value for each point, "" where a run has none.
 * `valueOf` holds, run by run, a value for each point of that run.
 */
export function shapedLike(block: RunBlock, valueOf: readonly (readonly (number | string)[])[]): (number | string)[][] {
  const cells: (number | string)[][] = Array.from({ length: block.rows }, () => block.runs.map(() => ''));
  block.runs.forEach((run, column) => {
    run.forEach((point, index) => {
      cells[point.row - 1][column] = valueOf[column][index];
    });
  });
  return block.sideways ? cells[0].map((_, column) => cells.map((row) => row[column])) : cells;
}
