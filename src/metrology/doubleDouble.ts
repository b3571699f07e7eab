/**
 * Numbers carried as an unevaluated sum of two doubles, about 31 digits: enough to form residuals and to expand
 * polynomials without losing the digits that a calibration is about.
 * Algorithms: T. J. Dekker, "A floating-point technique for extending the available precision" (1971), from memory.
 */
export type DoubleDouble = readonly [high: number, low: number];

/** Exact sum of two doubles. */
function twoSum(a: number, b: number): DoubleDouble {
  const sum = a + b;
  const part = sum - a;
  return [sum, a - (sum - part) + (b - part)];
}

/** Exact product of two doubles. */
function twoProduct(a: number, b: number): DoubleDouble {
  const product = a * b;
  const [aHigh, aLow] = halves(a);
  const [bHigh, bLow] = halves(b);
  return [product, aHigh * bHigh - product + aHigh * bLow + aLow * bHigh + aLow * bLow];
}

/** A double as the sum of two of 26 bits each. */
function halves(a: number): DoubleDouble {
  const scaled = 134217729 * a; // 2^27 + 1
  const high = scaled - (scaled - a);
  return [high, a - high];
}

function normalised(high: number, low: number): DoubleDouble {
  const sum = high + low;
  return [sum, low - (sum - high)];
}

/** A double, with nothing below it. */
export function exact(a: number): DoubleDouble {
  return [a, 0];
}

/** −a */
export function negated(a: DoubleDouble): DoubleDouble {
  return [-a[0], -a[1]];
}

/** a + b, to about 31 digits. */
export function add(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const [sum, error] = twoSum(a[0], b[0]);
  return normalised(sum, error + a[1] + b[1]);
}

/** a·b, to about 31 digits. */
export function multiply(a: DoubleDouble, b: DoubleDouble): DoubleDouble {
  const [product, error] = twoProduct(a[0], b[0]);
  return normalised(product, error + a[0] * b[1] + a[1] * b[0]);
}

/** Quotient by a double: long division, three digits of base 2^53. */
export function divide(a: DoubleDouble, b: number): DoubleDouble {
  const divisor = exact(b);
  let quotient: DoubleDouble = [0, 0];
  let rest = a;
  for (let digit = 0; digit < 3; digit += 1) {
    const part = exact(rest[0] / b);
    quotient = add(quotient, part);
    rest = add(rest, negated(multiply(part, divisor)));
  }
  return quotient;
}
