/** A straight line in the unknown k: intercept + slope·k. */
export interface SupportLine {
  readonly intercept: number;
  readonly slope: number;
}

/**
 * Least value of a convex, piecewise linear function of one unknown k, found exactly: the function is the greatest of
 * finitely many straight lines, and `greatestAt` names the one that is greatest at a given k.
 *
 * Cuts with the two lines that hold the minimum between them: where they meet is the minimum, or a line there rises above
 * and takes the place of one of the two. Each line is used at most once, so it ends; no step size, no tolerance to choose.
 * @param left, right two values of k with the minimum between them: the slope is ≤ 0 at left and ≥ 0 at right
 */
export function lowestPoint(greatestAt: (k: number) => SupportLine, left: number, right: number): { k: number; value: number } {
  let falling = greatestAt(left);
  let rising = greatestAt(right);
  if (falling.slope >= 0) return { k: left, value: valueAt(falling, left) };
  if (rising.slope <= 0) return { k: right, value: valueAt(rising, right) };
  for (;;) {
    const k = (falling.intercept - rising.intercept) / (rising.slope - falling.slope);
    const found = greatestAt(k);
    const value = valueAt(found, k);
    const expected = Math.max(valueAt(falling, k), valueAt(rising, k));
    const higher = value > expected + 4 * Number.EPSILON * Math.max(Math.abs(expected), Math.abs(found.intercept));
    if (!higher || found.slope === 0) return { k, value };
    if (found.slope < 0) falling = found;
    else rising = found;
  }
}

function valueAt({ intercept, slope }: SupportLine, k: number): number {
  return intercept + slope * k;
}
