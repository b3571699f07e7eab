import { isZero, type Point, type Run } from './run';

/** Every reading under load, of all runs, in the order run by run. Zero rows take no part in a calibration fit [ASTM E74]. */
export function loadedPoints(runs: readonly Run[]): Point[] {
  return runs.flatMap((run) => run.filter((point) => !isZero(point)));
}

/** A force and the mean of what was read there. */
export interface MeanPoint {
  readonly force: number;
  readonly reading: number;
}

/**
 * Run averages: the mean reading at each different force, forces ascending.
 * Where each run has forces of its own, a row is averaged over its runs first, force and reading alike.
 */
export function runAverages(runs: readonly Run[]): MeanPoint[] {
  const rows = groups(loadedPoints(runs), (point) => point.row).map((points) => ({ points, force: meanOf(points, 'force') }));
  return groups(rows, (row) => row.force)
    .map((same) => same.flatMap((row) => row.points))
    .map((points) => ({ force: meanOf(points, 'force'), reading: meanOf(points, 'reading') }))
    .sort((a, b) => a.force - b.force);
}

/** Mean of a quantity over points; of equal values, exactly that value. */
export function meanOf(points: readonly MeanPoint[], quantity: 'force' | 'reading'): number {
  const first = points[0][quantity];
  return first + points.reduce((sum, point) => sum + (point[quantity] - first), 0) / points.length;
}

/** Items gathered by key, in order of first appearance. */
export function groups<T, K>(items: readonly T[], keyOf: (item: T) => K): T[][] {
  const found = new Map<K, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = found.get(key);
    if (group) group.push(item);
    else found.set(key, [item]);
  }
  return [...found.values()];
}
