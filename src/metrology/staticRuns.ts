import { meanOf, type MeanPoint } from './calibrationData';
import { badInput } from './errors';
import { netRun } from './net';
import type { Point, Run } from './run';

/**
 * Runs made ready for the static characteristics: net of each run's initial zero, split at the greatest force.
 * The ascending part goes up to and including the first row of greatest force; the rest descends.
 */
export interface StaticRuns {
  /** Net runs. */
  readonly runs: readonly Run[];
  /** Row of the greatest force, as rows are named in the range. */
  readonly topRow: number;
  /** Greatest force (mean over the runs). */
  readonly capacity: number;
  /** RO, rated output: mean net output at the greatest force, sign kept. Never 0. */
  readonly ratedOutput: number;
}

/**
 * Makes runs ready for the static characteristics.
 * @throws MetrologyError if a run does not start with a zero, has no reading at the greatest force, or the span is zero
 * Source: ANSI/ISA-S37.1 vocabulary.
 */
export function staticRuns(raw: readonly Run[]): StaticRuns {
  const runs = raw.map((run) => netRun(run));
  const topRow = rowOfGreatestForce(runs);
  const top = runs.map((run, index) => {
    const point = run.find(({ row }) => row === topRow);
    if (!point) throw badInput(`readings row ${topRow}: run ${index + 1} has no reading at the greatest force`);
    return point;
  });
  const ratedOutput = meanOf(top, 'reading');
  if (ratedOutput === 0) throw badInput(`readings row ${topRow}: found a net output of 0 at the greatest force; expected a span`);
  return { runs, topRow, capacity: meanOf(top, 'force'), ratedOutput };
}

function rowOfGreatestForce(runs: readonly Run[]): number {
  let top: Point | undefined;
  for (const run of runs) {
    for (const point of run) {
      if (!top || point.force > top.force || (point.force === top.force && point.row < top.row)) top = point;
    }
  }
  if (!top || top.force === 0) throw badInput('forces: found no force other than 0; expected a run up to capacity');
  return top.row;
}

/** Points of one run up to and including the greatest force. */
export function ascending({ topRow }: StaticRuns, run: Run): Run {
  return run.filter((point) => point.row <= topRow);
}

/** Points of one run after the greatest force. */
export function descending({ topRow }: StaticRuns, run: Run): Run {
  return run.filter((point) => point.row > topRow);
}

/** Mean of the runs at each row of the ascending part, in the order applied. */
export function ascendingMean(data: StaticRuns): MeanPoint[] {
  const byRow = new Map<number, Point[]>();
  for (const run of data.runs) {
    for (const point of ascending(data, run)) byRow.set(point.row, [...(byRow.get(point.row) ?? []), point]);
  }
  return [...byRow.entries()]
    .sort(([a], [b]) => a - b)
    .map(([, points]) => ({ force: meanOf(points, 'force'), reading: meanOf(points, 'reading') }));
}

/** Net output at the greatest force (mean of the runs), in proportion at another capacity if one is given. */
export function sensitivity({ ratedOutput, capacity }: StaticRuns, atCapacity = capacity): number {
  return ratedOutput * (atCapacity / capacity);
}

/** Of several signed values the one of largest magnitude; of equal ones (to 12 digits) the first. */
export function worst(values: readonly number[]): number {
  return values.reduce((most, value) => (Math.abs(value) > Math.abs(most) * (1 + 1e-12) ? value : most), 0);
}
