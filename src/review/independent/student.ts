/**
 * Student's t by the incomplete beta function as a continued fraction, and its quantile by bisection; for many degrees of
 * freedom by its expansion about the normal distribution. Independent of the distributions that the cell functions use.
 * Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions, 26.5.8, 26.7.1, 26.7.5 (from memory).
 */

/** From so many degrees of freedom on the expansion is good to all digits. */
const MANY = 1500;
/** 0.9545 stands for exactly two standard deviations. */
const TWO_SIGMA = 0.9545;

/** Coverage factor k: the values within ± k have the given probability. */
export function coverage(probability: number, dof: number): number {
  const z = probability === TWO_SIGMA ? 2 : normalQuantile(probability);
  if (dof > 1e12) return z;
  if (dof >= MANY) return expansion(z, dof);
  const outside = probability === TWO_SIGMA ? 1 - within(2) : 1 - probability;
  let [low, high] = [0, 2];
  while (twoTails(high, dof) > outside) high *= 2;
  for (let i = 0; i < 200 && high - low > Number.EPSILON * high; i += 1) {
    const middle = (low + high) / 2;
    if (twoTails(middle, dof) > outside) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Probability of |t| above a value: I(ν/(ν + t²); ν/2, 1/2). */
function twoTails(t: number, dof: number): number {
  return incompleteBeta(dof / (dof + t * t), dof / 2, 0.5);
}

/** Probability of a normal value within ± z. */
function within(z: number): number {
  // erf by its series; z is 2 at the most where it is asked.
  let [term, sum] = [z, z];
  for (let n = 1; Math.abs(term) > 1e-18 * Math.abs(sum); n += 1) {
    term *= (z * z) / (2 * n + 1);
    sum += term;
  }
  return 2 * sum * Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
}

function normalQuantile(probability: number): number {
  let [low, high] = [0, 8];
  for (let i = 0; i < 200 && high - low > Number.EPSILON * high; i += 1) {
    const middle = (low + high) / 2;
    if (within(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function expansion(z: number, dof: number): number {
  const z2 = z * z;
  const terms = [
    z * (z2 + 1) / 4, z * ((5 * z2 + 16) * z2 + 3) / 96, z * (((3 * z2 + 19) * z2 + 17) * z2 - 15) / 384,
    z * ((((79 * z2 + 776) * z2 + 1482) * z2 - 1920) * z2 - 945) / 92_160,
  ];
  return terms.reduce((sum, term, i) => sum + term / dof ** (i + 1), z);
}

/** Regularised incomplete beta function. */
function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  return x < (a + 1) / (a + b + 2) ? front * fraction(x, a, b) / a : 1 - front * fraction(1 - x, b, a) / b;
}

/** The continued fraction of the incomplete beta function, from the front (Lentz). */
function fraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  const safe = (value: number) => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / safe(1 - (a + b) * x / (a + 1));
  let value = d;
  for (let m = 1; m <= 10_000; m += 1) {
    const even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / safe(1 + even * d);
    c = safe(1 + even / c);
    value *= d * c;
    const odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / safe(1 + odd * d);
    c = safe(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return value;
}

/** Stirling's series, its argument raised to 15 or more first. */
function logGamma(x: number): number {
  let [shifted, product] = [x, 1];
  while (shifted < 15) {
    product *= shifted;
    shifted += 1;
  }
  const square = 1 / (shifted * shifted);
  const series = (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680 - square * (1 / 1188 - square * (691 / 360_360)))))) / shifted;
  return (shifted - 0.5) * Math.log(shifted) - shifted + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}
