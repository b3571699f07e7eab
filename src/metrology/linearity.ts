import type { MeanPoint } from './calibrationData';
import { lowestPoint } from './envelope';
import { fitPolynomial } from './polynomialFit';
import { allPoints, ascendingMean, worst, type StaticRuns } from './staticRuns';

/** The straight lines that non-linearity can be stated against; see {@link referenceLine}. */
export const REFERENCE_LINES = ['terminal', 'bestfit', 'zerofit', 'minimax'] as const;
export type ReferenceLine = (typeof REFERENCE_LINES)[number];

/** output = intercept + slope·force */
export interface Line {
  readonly intercept: number;
  readonly slope: number;
}

/**
 * Reference line of the ascending mean:
 * - `terminal`: from the initial zero to the output at the greatest force
 * - `bestfit`: least squares, free intercept
 * - `zerofit`: least squares through the initial zero
 * - `minimax`: smallest greatest deviation, free intercept
 * Source: ANSI/ISA-S37.1 vocabulary (terminal, least-squares and independent linearity).
 */
export function referenceLine(data: StaticRuns, kind: ReferenceLine = 'terminal'): Line {
  const points = ascendingMean(data);
  switch (kind) {
    case 'terminal': return terminalLine(data);
    case 'bestfit': return leastSquares(points, true);
    case 'zerofit': return leastSquares(points, false);
    case 'minimax': return minimaxLine(points, terminalLine(data).slope);
  }
}

/** The line from the initial zero to the output at the greatest force. */
export function terminalLine({ ratedOutput, capacity }: StaticRuns): Line {
  return { intercept: 0, slope: ratedOutput / capacity };
}

function leastSquares(points: readonly MeanPoint[], constant: boolean): Line {
  const { coefficients } = fitPolynomial(points.map((p) => p.force), points.map((p) => p.reading), 1, { constant });
  return { intercept: coefficients[0], slope: coefficients[1] };
}

/**
 * The line whose greatest deviation is least: half the spread of y − slope·x is a convex, piecewise linear function of the
 * slope, and the intercept is the middle of that spread.
 */
function minimaxLine(points: readonly MeanPoint[], about: number): Line {
  const spreadAt = (slope: number) => {
    let top = points[0];
    let bottom = points[0];
    const rest = (point: MeanPoint) => point.reading - slope * point.force;
    for (const point of points) {
      if (rest(point) > rest(top)) top = point;
      if (rest(point) < rest(bottom)) bottom = point;
    }
    return { intercept: (top.reading - bottom.reading) / 2, slope: (bottom.force - top.force) / 2, middle: (rest(top) + rest(bottom)) / 2 };
  };
  const { left, right } = slopeBracket(points, about);
  const { k: slope } = lowestPoint(spreadAt, left, right);
  return { intercept: spreadAt(slope).middle, slope };
}

/** Slopes so far to either side of `about` that a reading near the greatest force decides the deviation. */
export function slopeBracket(points: readonly MeanPoint[], about: number): { left: number; right: number } {
  const most = points.reduce((largest, point) => Math.max(largest, Math.abs(point.reading - about * point.force)), 0);
  const greatest = points.reduce((largest, point) => Math.max(largest, point.force), 0);
  const reach = Math.max((4 * most) / greatest, Number.EPSILON * Math.abs(about) * 4);
  return { left: about - reach, right: about + reach };
}

/** Deviation of the ascending mean from the line at one force, fraction of RO. */
export interface Deviation {
  readonly force: number;
  readonly deviation: number;
}

/** Deviation of the ascending mean from the reference line at each force of the ascending part. */
export function deviations(data: StaticRuns, kind?: ReferenceLine): Deviation[] {
  const line = referenceLine(data, kind);
  return ascendingMean(data).map(({ force, reading }) => ({
    force,
    deviation: (reading - line.intercept - line.slope * force) / data.ratedOutput,
  }));
}

/** Non-linearity: the worst of the {@link deviations}, signed, fraction of RO. */
export function nonlinearity(data: StaticRuns, kind?: ReferenceLine): number {
  return worst(deviations(data, kind).map(({ deviation }) => deviation));
}

/**
 * Combined error: worst deviation of every net reading, up and down, of every run, from the terminal line; signed,
 * fraction of RO. Source: common practice.
 */
export function combinedError(data: StaticRuns): number {
  const { slope } = terminalLine(data);
  return worst(allPoints(data).map(({ force, reading }) => (reading - slope * force) / data.ratedOutput));
}
