import type { AppliedReading } from '../block';
import { median } from './median';

/** A line through readings over |force| that single wrong readings do not bend. */
export interface Trend {
  /** Output per unit of |force|, sign kept. Never 0. */
  readonly slope: number;
  /** What the line has at a force, in output units. */
  readonly at: (force: number) => number;
}

/**
 * The median of the slopes between all pairs of readings, and the median of what is left (Theil and Sen; common practice).
 * Undefined if the readings stand at one |force| only, or have no slope.
 */
export function trendOf(points: readonly AppliedReading[]): Trend | undefined {
  const slopes = points.flatMap((a, i) => points.slice(i + 1).flatMap((b) => {
    const step = Math.abs(b.applied) - Math.abs(a.applied);
    return step === 0 ? [] : [(b.reading - a.reading) / step];
  }));
  if (slopes.length === 0) return undefined;
  const slope = median(slopes);
  if (slope === 0) return undefined;
  const constant = median(points.map(({ applied, reading }) => reading - slope * Math.abs(applied)));
  return { slope, at: (force) => constant + slope * Math.abs(force) };
}

/** Greatest |force| of readings. */
export function greatestForce(points: readonly AppliedReading[]): number {
  return points.reduce((most, { applied }) => Math.max(most, Math.abs(applied)), 0);
}
