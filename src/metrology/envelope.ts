/** A straight line in the unknown k: value at k is `at` when asked there, and it grows by `slope` per unit of k. */
export interface SupportLine {
  readonly at: number;
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
  let falling = { k: left, ...greatestAt(left) };
  let rising = { k: right, ...greatestAt(right) };
  for (;;) {
    if (falling.slope >= 0) return { k: falling.k, value: falling.at };
    if (rising.slope <= 0) return { k: rising.k, value: rising.at };
    const k = meeting(falling, rising);
    const expected = falling.at + falling.slope * (k - falling.k);
    const found = { k, ...greatestAt(k) };
    const higher = found.at > expected + 4 * Number.EPSILON * Math.abs(expected);
    const between = k > falling.k && k < rising.k;
    if (!higher || !between || found.slope === 0) return { k, value: found.at };
    if (found.slope < 0) falling = found;
    else rising = found;
  }
}

interface PlacedLine extends SupportLine {
  readonly k: number;
}

function meeting(falling: PlacedLine, rising: PlacedLine): number {
  const gap = rising.at - rising.slope * (rising.k - falling.k) - falling.at;
  return falling.k + gap / (falling.slope - rising.slope);
}
