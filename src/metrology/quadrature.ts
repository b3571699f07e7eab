/** One point of a quadrature rule on −1 … 1. */
interface Node {
  readonly at: number;
  readonly weight: number;
}

const POINTS = 20;

/**
 * Gauss–Legendre rule of 20 points: exact for polynomials up to degree 39. The points are the roots of the Legendre
 * polynomial, by Newton's method from cos(π(i + 3/4)/(n + 1/2)).
 */
const RULE: readonly Node[] = Array.from({ length: POINTS }, (_, i) => nodeNear(Math.cos((Math.PI * (i + 0.75)) / (POINTS + 0.5))));

function nodeNear(start: number): Node {
  let at = start;
  for (let step = 0; step < 10; step += 1) {
    const { value, slope } = legendre(at);
    at -= value / slope;
  }
  return { at, weight: 2 / ((1 - at * at) * legendre(at).slope ** 2) };
}

function legendre(x: number): { value: number; slope: number } {
  let [before, value] = [1, x];
  for (let n = 2; n <= POINTS; n += 1) [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
  return { value, slope: (POINTS * (x * value - before)) / (x * x - 1) };
}

/**
 * Integral of a function over panels that meet at the given borders, 20 points a panel. The borders must be dense enough for
 * the function to be smooth on every panel: a kink or a jump belongs on a border.
 * @param borders rising
 */
export function integrate(integrand: (x: number) => number, borders: readonly number[]): number {
  let total = 0;
  for (let panel = 1; panel < borders.length; panel += 1) {
    const half = (borders[panel] - borders[panel - 1]) / 2;
    const middle = borders[panel - 1] + half;
    for (const { at, weight } of RULE) total += half * weight * integrand(middle + half * at);
  }
  return total;
}
