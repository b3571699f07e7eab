import type { Run } from '../metrology/run';
import type { Cells } from './cells';
import { CellFault } from './faults';
import { describe, numberAt } from './readCell';

/** Runs read from two ranges, and the shape to give results back in. */
export interface RunBlock {
  readonly runs: readonly Run[];
  /** Rows of the readings range, blank ones included (columns, if the block lies on its side). */
  readonly rows: number;
  /** True if a run is a row of the range rather than a column. */
  readonly sideways: boolean;
}

/**
 * Reads `forces` (one list for all runs, or one a run) and `readings` (a column a run) into runs.
 * Rows blank in both are skipped; a force with a blank reading is skipped for that run.
 * Errors name the row: text, booleans, a reading without a force, lengths that differ, directions that mix.
 */
export function readRuns(forces: Cells, readings: Cells): RunBlock {
  const sideways = forces.length === 1 && forces[0].length > 1;
  const across = sideways ? transposed(forces) : forces;
  const flip = sideways && !(readings[0].length === 1 && readings.length === across.length);
  const down = flip ? transposed(readings) : readings;
  checkShapes(across, down);

  const shared = across[0].length === 1;
  const direction = new DirectionGuard();
  const runs: Run[] = [];
  for (let run = 0; run < down[0].length; run += 1) {
    runs.push(readRun(across, down, shared ? 0 : run, run, direction));
  }
  if (runs.every((run) => run.length === 0)) {
    throw new CellFault('#VALUE!', 'readings: no row holds both a force and a reading');
  }
  return { runs, rows: down.length, sideways: flip };
}

function readRun(forces: Cells, readings: Cells, forceColumn: number, run: number, direction: DirectionGuard): Run {
  const points: { row: number; order: number; force: number; reading: number }[] = [];
  let order = 0;
  readings.forEach((cells, index) => {
    const row = index + 1;
    const force = numberAt(forces[index][forceColumn], 'forces', row, forces[0].length > 1 ? forceColumn : undefined);
    const reading = numberAt(cells[run], 'readings', row, cells.length > 1 ? run : undefined);
    if (force === undefined && reading !== undefined) {
      throw new CellFault('#VALUE!', `readings row ${row}: found the reading ${reading} without a force; expected a force in the same row`);
    }
    if (force === undefined) return;
    direction.check(force, row);
    order += 1;
    if (reading !== undefined) points.push({ row, order, force: Math.abs(force), reading });
  });
  return points;
}

function checkShapes(forces: Cells, readings: Cells): void {
  if (forces.length !== readings.length) {
    throw new CellFault('#VALUE!', `forces has ${forces.length} rows and readings ${readings.length}; expected the same number`);
  }
  const columns = forces[0].length;
  if (columns !== 1 && columns !== readings[0].length) {
    throw new CellFault('#VALUE!', `forces has ${columns} columns; expected 1, or one for each of the ${readings[0].length} runs of readings`);
  }
}

/** Tension is positive, compression negative; one block holds one of the two. */
class DirectionGuard {
  private first = 0;
  private firstRow = 0;

  check(force: number, row: number): void {
    if (force === 0) return;
    if (this.first === 0) {
      this.first = force;
      this.firstRow = row;
    } else if (Math.sign(force) !== Math.sign(this.first)) {
      throw new CellFault(
        '#VALUE!',
        `forces row ${row}: found ${describe(force)}, but row ${this.firstRow} holds ${describe(this.first)}; ` +
          'expected one direction (give tension and compression a range each)',
      );
    }
  }
}

function transposed(cells: Cells): Cells {
  return cells[0].map((_, column) => cells.map((row) => row[column]));
}

/** |force| of each cell of a block of one direction; blanks are undefined. */
export function magnitudes(forces: Cells): (number | undefined)[][] {
  const direction = new DirectionGuard();
  return forces.map((line, i) => line.map((cell, j) => {
    const force = numberAt(cell, 'forces', i + 1, line.length > 1 ? j : undefined);
    if (force !== undefined) direction.check(force, i + 1);
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

