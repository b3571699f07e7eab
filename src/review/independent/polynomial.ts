import { PolynomialRegression } from 'ml-regression-polynomial';

/** A polynomial by least squares. */
export interface Polynomial {
  /** Constant first, in powers of the abscissa as it was given. */
  readonly coefficients: readonly number[];
  /** Value less fitted value, one a point. */
  readonly residuals: readonly number[];
  /** Residual standard deviation √(Σd²/(n − m − 1)); undefined without a degree of freedom. */
  readonly sd: number | undefined;
  readonly at: (x: number) => number;
}

/** Fits on what the fit before left; more change nothing. */
const ROUNDS = 5;

/**
 * Least squares by the fit library, with the abscissa as a share of its greatest magnitude, fitted again to its own residuals.
 * The sheet's functions go another way (orthogonal polynomials); here is nothing of theirs.
 */
export function fitByLibrary(xs: readonly number[], ys: readonly number[], degree: number): Polynomial {
  const greatest = xs.reduce((most, x) => Math.max(most, Math.abs(x)), 0);
  // Shares are taken about the middle as well, so that narrow ranges keep their digits.
  const [least, most] = [Math.min(...xs), Math.max(...xs)];
  const [middle, half] = most > least ? [(least + most) / 2, (most - least) / 2] : [0, greatest];
  const shares = xs.map((x) => (x - middle) / half);
  let scaled: number[] = Array.from({ length: degree + 1 }, () => 0);
  let residuals = [...ys];
  for (let round = 0; round < ROUNDS; round += 1) {
    const more = new PolynomialRegression(shares, residuals, degree).coefficients;
    scaled = scaled.map((coefficient, k) => coefficient + (more[k] ?? 0));
    residuals = ys.map((y, i) => y - evaluate(scaled, shares[i]));
  }
  const dof = xs.length - degree - 1;
  return {
    coefficients: expanded(scaled, middle, half),
    residuals,
    sd: dof > 0 ? Math.sqrt(residuals.reduce((sum, d) => sum + d * d, 0) / dof) : undefined,
    at: (x) => evaluate(scaled, (x - middle) / half),
  };
}

/** Value of a polynomial, constant first. */
export function evaluate(coefficients: readonly number[], x: number): number {
  return coefficients.reduceRight((sum, coefficient) => sum * x + coefficient, 0);
}

/** Coefficients in powers of x from those in powers of (x − middle)/half. */
function expanded(scaled: readonly number[], middle: number, half: number): number[] {
  return scaled.reduceRight<number[]>((sum, coefficient) => {
    const next = Array.from({ length: sum.length + 1 }, (_, k) => ((sum[k - 1] ?? 0) - (sum[k] ?? 0) * middle) / half);
    next[0] = (next[0] ?? 0) + coefficient;
    return next;
  }, []).slice(0, scaled.length);
}
