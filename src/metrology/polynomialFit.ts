import { inverse, Matrix } from 'ml-matrix';
import { PolynomialRegression } from 'ml-regression-polynomial';
import { add, exact, negated, type DoubleDouble } from './doubleDouble';
import { badInput } from './errors';
import { evaluateScaled, expanded, scaled, scalingOf, type Scaling } from './scaling';

export const GREATEST_DEGREE = 5;

/** A least-squares polynomial y = A0 + A1·x + … + Am·x^m with its statistics. */
export interface PolynomialFit {
  readonly degree: number;
  /** False if A0 was held at 0. */
  readonly constant: boolean;
  /** A0 … Am, in units of y per power of x. */
  readonly coefficients: readonly number[];
  /** Standard error of each coefficient; of a held A0: undefined. All undefined without degrees of freedom. */
  readonly standardErrors: readonly (number | undefined)[];
  readonly n: number;
  /** Degrees of freedom: n − m − 1, or n − m with A0 held at 0. */
  readonly dof: number;
  /** y − fitted, in the order given. */
  readonly residuals: readonly number[];
  /** Σ residual². */
  readonly sumOfSquares: number;
  /** s = √(Σ residual²/dof), units of y; undefined without degrees of freedom. */
  readonly residualSd: number | undefined;
  /** 1 − Σ residual²/Σ(y − ȳ)², or over Σy² with A0 held at 0; undefined if the y do not vary. */
  readonly rSquared: number | undefined;
  /** x′(X′X)⁻¹x: the variance of the fitted value at x, in units of s². */
  readonly leverage: (x: number) => number;
}

/**
 * Fits a polynomial by least squares.
 *
 * The fit library solves the normal equations, which lose digits in raw powers of a force in the millions. So it is
 * given z = (x − centre)/halfWidth in [−1, 1], once for the data and once more for the residuals of that first fit;
 * residuals and the expansion to powers of x are formed in double-double arithmetic.
 * Digits reached on the NIST StRD sets: see test/metrology/strd.test.ts.
 *
 * @param x abscissas, any order, repeats allowed
 * @param y ordinates, as many
 * @param degree 1 to 5
 * @param constant false holds A0 at 0
 * @throws MetrologyError if there are fewer different abscissas than coefficients, or they lie too close to tell apart
 */
export function fitPolynomial(x: readonly number[], y: readonly number[], degree: number, constant = true): PolynomialFit {
  requireDistinct(x, degree, constant);
  const scaling = scalingOf(x, constant);
  const z = x.map((value) => scaled(scaling, value));
  try {
    const { inZ, residuals } = fitTwice(z, y, degree, constant);
    const coefficients = expanded(scaling, inZ).map(([high]) => high);
    const statistics = statisticsOf(y, residuals, degree, constant);
    const covariance = unscaledCovariance(z, degree, constant);
    const errors = standardErrorsOf(scaling, covariance, degree, constant, statistics.residualSd);
    if (![...coefficients, statistics.sumOfSquares].every(Number.isFinite)) throw new Error('not finite');
    return {
      degree, constant, coefficients, residuals, ...statistics, standardErrors: errors,
      leverage: (at) => quadraticForm(covariance, powers((at - scaling.centre) / scaling.halfWidth, degree, constant)),
    };
  } catch {
    throw badInput(`forces or readings too close together, too large or too small to fit a polynomial of degree ${degree}`);
  }
}

function requireDistinct(x: readonly number[], degree: number, constant: boolean): void {
  const needed = degree + (constant ? 1 : 0);
  const distinct = new Set(x);
  if (!constant) distinct.delete(0);
  if (distinct.size < needed) {
    throw badInput(
      `found ${distinct.size} different non-zero ${distinct.size === 1 ? 'point' : 'points'}; a polynomial of degree ${degree} needs at least ${needed}`,
    );
  }
}

/** The library's fit, and its fit to what the first one left. */
function fitTwice(z: readonly DoubleDouble[], y: readonly number[], degree: number, constant: boolean) {
  const abscissas = z.map(([high]) => high);
  let inZ: DoubleDouble[] = Array.from({ length: degree + 1 }, () => exact(0));
  let residuals: readonly number[] = y;
  for (let pass = 0; pass < 2; pass += 1) {
    const found = new PolynomialRegression(abscissas, [...residuals], degree, { interceptAtZero: !constant }).coefficients;
    const correction = constant ? found : [0, ...found];
    inZ = inZ.map((coefficient, power) => add(coefficient, exact(correction[power])));
    residuals = z.map((value, i) => add(exact(y[i]), negated(evaluateScaled(inZ, value)))[0]);
  }
  return { inZ, residuals };
}

function statisticsOf(y: readonly number[], residuals: readonly number[], degree: number, constant: boolean) {
  const n = y.length;
  const dof = n - degree - (constant ? 1 : 0);
  const sumOfSquares = sum(residuals.map((residual) => residual * residual));
  const mean = constant ? sum(y) / n : 0;
  const total = sum(y.map((value) => (value - mean) ** 2));
  return {
    n, dof, sumOfSquares,
    residualSd: dof > 0 ? Math.sqrt(sumOfSquares / dof) : undefined,
    rSquared: total > 0 ? 1 - sumOfSquares / total : undefined,
  };
}

/** (Z′Z)⁻¹ in powers of z. */
function unscaledCovariance(z: readonly DoubleDouble[], degree: number, constant: boolean): number[][] {
  const design = new Matrix(z.map(([high]) => powers(high, degree, constant)));
  return inverse(design.transpose().mmul(design)).to2DArray();
}

/** Standard errors in powers of x: each is s·√(c′(Z′Z)⁻¹c), c the row that turns coefficients in z into that one in x. */
function standardErrorsOf(
  scaling: Scaling, covariance: readonly (readonly number[])[], degree: number, constant: boolean, s: number | undefined,
): (number | undefined)[] {
  const first = constant ? 0 : 1;
  const basis: number[][] = [];
  for (let power = first; power <= degree; power += 1) {
    const unit = Array.from({ length: degree + 1 }, (_, i) => exact(i === power ? 1 : 0));
    basis.push(expanded(scaling, unit).map(([high]) => high));
  }
  return Array.from({ length: degree + 1 }, (_, power) => {
    if (s === undefined || power < first) return undefined;
    return s * Math.sqrt(quadraticForm(covariance, basis.map((row) => row[power])));
  });
}

function powers(z: number, degree: number, constant: boolean): number[] {
  const row = constant ? [1] : [z];
  for (let power = constant ? 1 : 2; power <= degree; power += 1) row.push(row[row.length - 1] * z);
  return row;
}

/** v′·M·v */
function quadraticForm(matrix: readonly (readonly number[])[], vector: readonly number[]): number {
  let total = 0;
  for (let i = 0; i < vector.length; i += 1) {
    for (let j = 0; j < vector.length; j += 1) total += vector[i] * matrix[i][j] * vector[j];
  }
  return total;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
