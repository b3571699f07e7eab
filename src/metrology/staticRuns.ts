import { groups, meanOf, type MeanPoint } from './calibrationData';
import { badInput } from './errors';
import { netRun } from './net';
import { isZero, type Point, type Run } from './run';

/** How far the forces of runs may differ in one row, or at the top, and still be the same step: a fraction of capacity. */
const SAME_STEP = 0.01;

/** One net run, split at its greatest force. */
export interface StaticRun {
  /** Up to and including the first row of greatest force. */
  readonly ascending: Run;
  /** The rest. */
  readonly descending: Run;
}

/** Runs made ready for the static characteristics: net of each run's initial zero, split at the greatest force. */
export interface StaticRuns {
  readonly runs: readonly StaticRun[];
  /** Greatest force (mean over the runs). */
  readonly capacity: number;
  /** RO, rated output: mean net output at the greatest force, sign kept. Never 0. */
  readonly ratedOutput: number;
}

/**
 * Makes runs ready for the static characteristics.
 * @throws MetrologyError if a run is empty or does not start with a zero, if the runs do not go to the same force, or if the
 * span is zero
 * Source: ANSI/ISA-S37.1 vocabulary.
 */
export function staticRuns(raw: readonly Run[]): StaticRuns {
  const tops: Point[] = [];
  const runs = raw.map((run, index): StaticRun => {
    if (run.length === 0) throw badInput(`readings: run ${index + 1} is empty; expected a reading at every force`);
    const net = netRun(run);
    const top = firstOfGreatest(net);
    const split = net.indexOf(top) + 1;
    tops.push(top);
    return { ascending: net.slice(0, split), descending: net.slice(split) };
  });
  const capacity = meanOf(tops, 'force');
  const ratedOutput = meanOf(tops, 'reading');
  requireSameTop(tops, capacity);
  if (ratedOutput === 0) throw badInput(`readings ${tops[0].place}: found a net output of 0 at the greatest force; expected a span`);
  return { runs, capacity, ratedOutput };
}

function firstOfGreatest(run: Run): Point {
  const top = run.reduce((most, point) => (point.force > most.force ? point : most));
  if (isZero(top)) throw badInput('forces: found no force other than 0; expected a run up to capacity');
  return top;
}

function requireSameTop(tops: readonly Point[], capacity: number): void {
  const other = tops.findIndex((top) => Math.abs(top.force - tops[0].force) > SAME_STEP * capacity);
  if (other > 0) {
    throw badInput(`forces: run ${other + 1} goes to ${tops[other].force}, run 1 to ${tops[0].force}; expected the same greatest force in every run`);
  }
}

/** Every net point, up and down, of every run. */
export function allPoints({ runs }: StaticRuns): Point[] {
  return runs.flatMap(({ ascending, descending }) => [...ascending, ...descending]);
}

/**
 * Mean of the runs at each row of the ascending part, in the order applied.
 * @throws MetrologyError if the runs have different steps in a row
 */
export function ascendingMean({ runs, capacity }: StaticRuns): MeanPoint[] {
  const rows = groups(runs.flatMap((run) => run.ascending), (point) => point.row).sort((a, b) => a[0].row - b[0].row);
  return rows.map((points) => {
    const other = points.find((point) => Math.abs(point.force - points[0].force) > SAME_STEP * capacity);
    if (other) {
      throw badInput(`forces ${other.place}: found ${other.force} where another run has ${points[0].force}; expected the same steps in every run`);
    }
    return { force: meanOf(points, 'force'), reading: meanOf(points, 'reading') };
  });
}

/** Net output at the greatest force (mean of the runs), in proportion at another capacity if one is given. */
export function sensitivity({ ratedOutput, capacity }: StaticRuns, atCapacity = capacity): number {
  return ratedOutput * (atCapacity / capacity);
}

/** Of several signed values the one of largest magnitude; of equal ones (to 12 digits) the first. */
export function worst(values: readonly number[]): number {
  return values.reduce((most, value) => (Math.abs(value) > Math.abs(most) * (1 + 1e-12) ? value : most), 0);
}
