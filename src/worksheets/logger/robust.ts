/** Standard deviation of a normal distribution in units of its median absolute deviation: 1/Φ⁻¹(3/4). */
const NORMAL = 1.482602218505602;

/** The middle value, or the mean of the two in the middle. Of nothing: NaN. */
export function medianOf(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const middle = sorted.length / 2;
  return (sorted[Math.ceil(middle) - 1] + sorted[Math.floor(middle)]) / 2;
}

/** Standard deviation as the median absolute deviation shows it, which up to half of the values, however wrong, do not spoil. */
export function robustDeviation(values: ArrayLike<number>): number {
  const middle = medianOf(values);
  return NORMAL * medianOf(Float64Array.from(values, (value) => Math.abs(value - middle)));
}

/** Greatest number of points whose pairs are worth going through for a slope. */
const MOST_POINTS = 60;

/** A straight line by the median of the slopes of all pairs of points (Theil and Sen); evenly chosen points where there are many. */
export function robustLine(x: ArrayLike<number>, y: ArrayLike<number>): { readonly slope: number; at(x: number): number } {
  const chosen = Array.from({ length: Math.min(x.length, MOST_POINTS) }, (_, i) => Math.floor((i * x.length) / Math.min(x.length, MOST_POINTS)));
  const slopes: number[] = [];
  chosen.forEach((i, place) => {
    for (const j of chosen.slice(place + 1)) if (x[j] !== x[i]) slopes.push((y[j] - y[i]) / (x[j] - x[i]));
  });
  const slope = slopes.length > 0 ? medianOf(slopes) : 0;
  const middle = medianOf(chosen.map((i) => y[i] - slope * x[i]));
  return { slope, at: (place) => middle + slope * place };
}

/** Each value replaced by the median of itself and two on either side: single spikes go, edges stay where they are. */
export function medianFiltered(values: Float64Array): Float64Array {
  const filtered = values.slice();
  for (let i = 2; i < values.length - 2; i += 1) filtered[i] = medianOfFive(values[i - 2], values[i - 1], values[i], values[i + 1], values[i + 2]);
  return filtered;
}

/** Of two pairs put in order, the lesser low and the greater high are not in the middle; written out for speed over millions. */
function medianOfFive(p: number, q: number, r: number, s: number, t: number): number {
  let [a, b, c, d] = [p, q, r, s];
  if (a > b) [a, b] = [b, a];
  if (c > d) [c, d] = [d, c];
  if (a > c) [a, b, c, d] = [c, d, a, b];
  // a is the least of four, so the median of five is that of b, c, d and t without the greatest and the least.
  let e = t;
  if (b > e) [b, e] = [e, b];
  if (c < b) [b, e, c, d] = [c, d, b, e];
  // Now b is the least of the four left; of c and e the lesser is the median.
  return c < e ? c : e;
}

/** Values chosen evenly, at most so many. */
export function thinned(values: Float64Array, most: number): Float64Array {
  return values.length <= most ? values : Float64Array.from({ length: most }, (_, i) => values[Math.floor((i * values.length) / most)]);
}
