import { lowestPoint } from './envelope';
import { badInput } from './errors';
import { slopeBracket } from './linearity';
import type { Point } from './run';
import type { StaticRuns } from './staticRuns';

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
export function errorBand({ runs, capacity, ratedOutput }: StaticRuns): ErrorBand {
  const points = runs.flat();
  const { left, right } = slopeBracket([{ force: 0, reading: 0 }, ...points], ratedOutput / capacity);
  const { value } = lowestPoint((k) => worstDeviation(points, k), left, right);
  const output = middleSlope(points, value) * capacity;
  if (output === 0) throw badInput('readings: the line of least deviation is flat; expected an output that grows with force');
  return { halfWidth: value / Math.abs(output), output };
}

function worstDeviation(points: readonly Point[], k: number): { at: number; slope: number } {
  let most = { at: 0, slope: 0 };
  for (const { force, reading } of points) {
    const deviation = reading - k * force;
    if (Math.abs(deviation) > most.at) most = { at: Math.abs(deviation), slope: deviation > 0 ? -force : force };
  }
  return most;
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
