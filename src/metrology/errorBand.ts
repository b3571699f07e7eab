import { lowestPoint, type SupportLine } from './envelope';
import { badInput } from './errors';
import { slopeBracket } from './linearity';
import type { Point } from './run';
import { allPoints, type StaticRuns } from './staticRuns';

/** Static error band: its half-width as a fraction of the line's output at the greatest force, and that output. */
export interface ErrorBand {
  readonly halfWidth: number;
  readonly output: number;
}

/**
 * Static error band: of the lines through the initial zero, the one whose greatest deviation over all net readings, up and
 * down, of every run, is least. max|y − k·x| is a convex, piecewise linear function of the slope k, so the least is exact.
 * Where a zero reading alone sets the half-width, a whole interval of slopes shares it; its middle is taken.
 * Source: ANSI/ISA-S37.1 vocabulary; line through the zero: common practice.
 */
export function errorBand(data: StaticRuns): ErrorBand {
  const { capacity, ratedOutput } = data;
  const points = allPoints(data);
  const { left, right } = slopeBracket(points, ratedOutput / capacity);
  const { value } = lowestPoint((k) => worstDeviation(points, k), left, right);
  const output = middleSlope(points, value) * capacity;
  if (output === 0) throw badInput('readings: the line of least deviation is flat; expected an output that grows with force');
  return { halfWidth: value / Math.abs(output), output };
}

/** |X − k·F| of the reading where it is greatest, as a line in k. */
function worstDeviation(points: readonly Point[], k: number): SupportLine {
  let most = 0;
  let line: SupportLine = { intercept: 0, slope: 0 };
  for (const { force, reading } of points) {
    const deviation = reading - k * force;
    if (Math.abs(deviation) <= most) continue;
    most = Math.abs(deviation);
    line = deviation > 0 ? { intercept: reading, slope: -force } : { intercept: -reading, slope: force };
  }
  return line;
}

/** Middle of the slopes that keep every reading within the half-width. */
function middleSlope(points: readonly Point[], halfWidth: number): number {
  let least = -Infinity;
  let greatest = Infinity;
  for (const { force, reading } of points) {
    if (force === 0) continue;
    least = Math.max(least, (reading - halfWidth) / force);
    greatest = Math.min(greatest, (reading + halfWidth) / force);
  }
  return least + (greatest - least) / 2;
}
