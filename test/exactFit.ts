/**
 * Least squares in exact rational arithmetic, slow and obvious: the decimals as typed, the normal equations in powers of x,
 * Gauss's elimination on fractions of big integers. No rounding until the results are turned into doubles.
 */
interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}

const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? (a < 0n ? -a : a) : gcd(b, a % b));

function fraction(n: bigint, d: bigint): Fraction {
  const common = gcd(n, d) * (d < 0n ? -1n : 1n);
  return { n: n / common, d: d / common };
}

/** The decimal that a number is printed as, exactly. */
export function decimal(value: number): Fraction {
  const [mantissa, exponent = '0'] = value.toString().split('e');
  const [whole, part = ''] = mantissa.split('.');
  const power = Number(exponent) - part.length;
  const digits = BigInt(whole + part);
  return power < 0 ? fraction(digits, 10n ** BigInt(-power)) : fraction(digits * 10n ** BigInt(power), 1n);
}

const times = (a: Fraction, b: Fraction) => fraction(a.n * b.n, a.d * b.d);
const minus = (a: Fraction, b: Fraction) => fraction(a.n * b.d - b.n * a.d, a.d * b.d);
const plus = (a: Fraction, b: Fraction) => fraction(a.n * b.d + b.n * a.d, a.d * b.d);
const over = (a: Fraction, b: Fraction) => fraction(a.n * b.d, a.d * b.n);
const zero: Fraction = { n: 0n, d: 1n };
const one: Fraction = { n: 1n, d: 1n };

/** A fraction as a double: 30 digits of it, read back. */
function toNumber({ n, d }: Fraction): number {
  if (n === 0n) return 0;
  const shift = BigInt(Math.max(0, 40 - n.toString().length + d.toString().length));
  return Number(`${(n * 10n ** shift) / d}e-${shift}`);
}

/** Inverse of a matrix by Gauss–Jordan elimination. */
function inverse(matrix: Fraction[][]): Fraction[][] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? one : zero))]);
  for (let pivot = 0; pivot < size; pivot += 1) {
    const found = rows.findIndex((row, i) => i >= pivot && row[pivot].n !== 0n);
    [rows[pivot], rows[found]] = [rows[found], rows[pivot]];
    rows[pivot] = rows[pivot].map((cell) => over(cell, rows[pivot][pivot]));
    for (let i = 0; i < size; i += 1) {
      if (i !== pivot) rows[i] = rows[i].map((cell, j) => minus(cell, times(rows[i][pivot], rows[pivot][j])));
    }
  }
  return rows.map((row) => row.slice(size));
}

/** Coefficients (from the first fitted power), their standard errors, and s. */
export function exactFit(x: readonly number[], y: readonly number[], degree: number, constant: boolean) {
  const design = x.map(decimal).map((value) => {
    const row: Fraction[] = [one];
    for (let power = 1; power <= degree; power += 1) row.push(times(row[power - 1], value));
    return constant ? row : row.slice(1);
  });
  const ys = y.map(decimal);
  const dot = (a: Fraction[], b: Fraction[]) => a.reduce((sum, value, i) => plus(sum, times(value, b[i])), zero);
  const column = (j: number) => design.map((row) => row[j]);
  const size = design[0].length;
  const normal = Array.from({ length: size }, (_, i) => Array.from({ length: size }, (_unused, j) => dot(column(i), column(j))));
  const inverted = inverse(normal);
  const moments = Array.from({ length: size }, (_, i) => dot(column(i), ys));
  const coefficients = inverted.map((row) => dot(row, moments));
  const residuals = design.map((row, i) => minus(ys[i], dot(row, coefficients)));
  const variance = over(dot(residuals, residuals), { n: BigInt(x.length - size), d: 1n });
  return {
    coefficients: coefficients.map(toNumber),
    standardErrors: inverted.map((row, i) => Math.sqrt(toNumber(times(variance, row[i])))),
    residualSd: Math.sqrt(toNumber(variance)),
  };
}
