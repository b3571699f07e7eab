/** Halvings that reach the last bit between any two doubles a calibration meets; they end sooner, as soon as nothing lies between. */
const MOST_HALVINGS = 200;

/**
 * The two neighbouring doubles between which a condition that holds at `near`, and not at `far`, ceases to hold. The ends may
 * stand either way round.
 */
export function bisect(holds: (at: number) => boolean, near: number, far: number): { near: number; far: number } {
  let [last, first] = [near, far];
  for (let halving = 0; halving < MOST_HALVINGS; halving += 1) {
    const middle = last + (first - last) / 2;
    if (middle === last || middle === first) break;
    if (holds(middle)) last = middle;
    else first = middle;
  }
  return { near: last, far: first };
}
