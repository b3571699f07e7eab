import { readingsOf, type AppliedReading } from '../block';
import type { Finding } from './finding';
import type { RunSheet } from './runSheet';
import { trendOf } from './trend';

/** Runs whose readings move against those of the other runs: polarity, or a sign left out. Of two runs, the second. */
export function signOfRuns(sheet: RunSheet): Finding[] {
  return sheet.forceBlocks().flatMap((block) => {
    const runs = block.runs.flatMap((_, run) => {
      const points = readingsOf(block, run);
      const trend = trendOf(points);
      return trend ? [{ run, points, sign: Math.sign(trend.slope) }] : [];
    });
    const balance = runs.reduce((sum, { sign }) => sum + sign, 0) || runs[0]?.sign;
    return runs.filter(({ sign }) => sign !== Math.sign(balance)).map(({ run, points, sign }): Finding => {
      const { cell, reading, applied } = farthest(points);
      return {
        severity: 'wrong', at: cell.at,
        message: `${sheet.runName(block, run)}: the readings ${sign < 0 ? 'fall' : 'rise'} with the magnitude of the force, to ${sheet.output(reading)} at ${sheet.force(applied)} in ${cell.at}, `
          + `while they ${sign < 0 ? 'rise' : 'fall'} in the other runs; expected one sign: a lead reversed, or a sign left out?`,
      };
    });
  });
}

function farthest(points: readonly AppliedReading[]): AppliedReading {
  return points.reduce((most, point) => (Math.abs(point.applied) > Math.abs(most.applied) ? point : most));
}
