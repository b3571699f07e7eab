/** A straight line by least squares, from sums about the means. */
export interface Line {
  readonly slope: number;
  readonly meanX: number;
  readonly meanY: number;
  /** Sum of squares of x about its mean. */
  readonly spread: number;
  /** Residual standard deviation; undefined with two points. */
  readonly sd: number | undefined;
  readonly at: (x: number) => number;
}

/** The line through points with at least two different abscissas; undefined without. */
export function lineThrough(xs: readonly number[], ys: readonly number[]): Line | undefined {
  const n = xs.length;
  if (n < 2) return undefined;
  const average = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [meanX, meanY] = [average(xs), average(ys)];
  const spread = xs.reduce((sum, x) => sum + (x - meanX) ** 2, 0);
  if (spread === 0) return undefined;
  const slope = xs.reduce((sum, x, i) => sum + (x - meanX) * (ys[i] - meanY), 0) / spread;
  const at = (x: number) => meanY + slope * (x - meanX);
  const squares = xs.reduce((sum, x, i) => sum + (ys[i] - at(x)) ** 2, 0);
  return { slope, meanX, meanY, spread, sd: n > 2 ? Math.sqrt(squares / (n - 2)) : undefined, at };
}
