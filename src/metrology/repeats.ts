import { groups } from './calibrationData';
import { badInput, noAnswer } from './errors';
import { isZero } from './run';
import { allPoints, worst, type StaticRuns } from './staticRuns';
import { counted } from './wording';

/**
 * Hysteresis: within each run, descending − ascending reading at the same force, fraction of RO, signed; the worst over
 * the forces (the zeros included) and the runs, or over the runs at one force.
 * Source: ANSI/ISA-S37.1 (within one calibration cycle; from memory).
 * @throws MetrologyError (no answer) if no force under load, or not the force asked for, stands on both branches of a run
 */
export function hysteresis({ runs, ratedOutput }: StaticRuns, at?: number): number {
  const pairs = runs.flatMap(({ ascending, descending }) => {
    const rising = new Map(ascending.map((point) => [point.force, point.reading]));
    return descending
      .filter(({ force }) => rising.has(force) && (at === undefined || force === at))
      .map(({ force, reading }) => ({ force, difference: reading - (rising.get(force) as number) }));
  });
  if (at !== undefined && pairs.length === 0) {
    throw noAnswer(`force ${at} does not stand both in the ascending and the descending part of a run`);
  }
  // A zero that returns says nothing of the way between.
  if (at === undefined && !pairs.some(({ force }) => force > 0)) {
    throw noAnswer('no force stands both in the ascending and the descending part; hysteresis needs the same forces on the way down');
  }
  return worst(pairs.map(({ difference }) => difference)) / ratedOutput;
}

/**
 * Repeatability: the worst spread (greatest − least net reading) between runs at the same row, that is the same force and
 * branch; fraction of |RO|, ≥ 0. Source: ANSI/ISA-S37.1 vocabulary.
 * @throws MetrologyError (no answer) with fewer than two runs; (input) if the runs have different forces in a row
 */
export function repeatability(data: StaticRuns): number {
  if (data.runs.length < 2) throw noAnswer(`found ${counted(data.runs.length, 'run')}; repeatability compares two runs or more`);
  const spreads = groups(allPoints(data), (point) => point.row).map((points) => {
    const different = points.find((point) => point.force !== points[0].force);
    if (different) {
      throw badInput(
        `forces ${different.place}: found ${different.force} where another run has ${points[0].force}; repeatability needs the same force in a row`,
      );
    }
    const readings = points.map((point) => point.reading);
    return Math.max(...readings) - Math.min(...readings);
  });
  return worst(spreads) / Math.abs(data.ratedOutput);
}

/**
 * Zero return: last zero − first zero of a run, fraction of RO, signed; the worst of the runs.
 * @throws MetrologyError (no answer) if a run has no zero after the greatest force
 */
export function zeroReturn({ runs, ratedOutput }: StaticRuns): number {
  return worst(runs.map(({ descending }, index) => {
    const last = descending.findLast(isZero);
    if (!last) throw noAnswer(`run ${index + 1} has no zero reading after the greatest force`);
    return last.reading / ratedOutput;
  }));
}
