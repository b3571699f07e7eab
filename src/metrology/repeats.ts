import { groups } from './calibrationData';
import { badInput, noAnswer } from './errors';
import { isZero } from './run';
import { ascending, descending, worst, type StaticRuns } from './staticRuns';

/**
 * Hysteresis: within each run, descending − ascending reading at the same force, fraction of RO, signed; the worst over
 * the forces (the zeros included) and the runs, or over the runs at one force.
 * Source: ANSI/ISA-S37.1 (within one calibration cycle; from memory).
 * @throws MetrologyError (no answer) if no force, or not that force, stands on both branches of a run
 */
export function hysteresis(data: StaticRuns, at?: number): number {
  const differences = data.runs.flatMap((run) => {
    const rising = new Map(ascending(data, run).map((point) => [point.force, point.reading]));
    return descending(data, run)
      .filter(({ force }) => rising.has(force) && (at === undefined || force === at))
      .map(({ force, reading }) => reading - (rising.get(force) as number));
  });
  if (differences.length === 0) {
    throw noAnswer(
      at === undefined
        ? 'no force stands both in the ascending and the descending part; hysteresis needs readings on the way down'
        : `force ${at} does not stand both in the ascending and the descending part of a run`,
    );
  }
  return worst(differences) / data.ratedOutput;
}

/**
 * Repeatability: the worst spread (greatest − least net reading) between runs at the same row, that is the same force and
 * branch; fraction of |RO|, ≥ 0. Source: ANSI/ISA-S37.1 vocabulary.
 * @throws MetrologyError (no answer) with fewer than two runs; (input) if the runs have different forces in a row
 */
export function repeatability({ runs, ratedOutput }: StaticRuns): number {
  if (runs.length < 2) throw noAnswer(`found ${runs.length} run; repeatability compares two runs or more`);
  const spreads = groups(runs.flat(), (point) => point.row).map((points) => {
    const different = points.find((point) => point.force !== points[0].force);
    if (different) {
      throw badInput(
        `forces row ${different.row}: found ${points[0].force} and ${different.force} in different runs; repeatability needs the same force in a row`,
      );
    }
    const readings = points.map((point) => point.reading);
    return Math.max(...readings) - Math.min(...readings);
  });
  return worst(spreads) / Math.abs(ratedOutput);
}

/**
 * Zero return: last zero − first zero of a run, fraction of RO, signed; the worst of the runs.
 * @throws MetrologyError (no answer) if a run has no zero after the greatest force
 */
export function zeroReturn(data: StaticRuns): number {
  return worst(data.runs.map((run, index) => {
    const last = descending(data, run).findLast(isZero);
    if (!last) throw noAnswer(`run ${index + 1} has no zero reading after the greatest force`);
    return last.reading / data.ratedOutput;
  }));
}
