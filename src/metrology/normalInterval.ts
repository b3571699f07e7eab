import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

/** Probability that a standard normal value is at most z. */
export function below(z: number): number {
  return normalCdf(z, 0, 1);
}

/** Probability that a standard normal value lies between a and b ≥ a, taken in the tail that keeps its digits. */
export function between(a: number, b: number): number {
  return a > 0 ? below(-a) - below(-b) : below(b) - below(a);
}

/** Probability that a standard normal value lies below a or above b ≥ a. */
export function outside(a: number, b: number): number {
  return below(a) + below(-b);
}
