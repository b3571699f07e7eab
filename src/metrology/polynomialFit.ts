import { add, divide, exact, multiply, negated, type DoubleDouble } from './doubleDouble';
import { badInput } from './errors';
import { basisPowers, basisValues, exactBasisValues, orthogonalBasis, type OrthogonalBasis } from './orthogonalBasis';
import { expanded, scaled, scalingOf, type Scaling } from './scaling';
import { counted } from './wording';

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

/** How a polynomial is fitted. */
export interface FitOptions {
  /** False holds A0 at 0; true if left out. */
  readonly constant?: boolean;
  /** What the abscissas are, for messages; "force" if left out. */
  readonly abscissa?: string;
}

/**
 * Fits a polynomial by least squares.
 *
 * In powers of a force the normal equations lose digits. So the polynomial is written in orthogonal polynomials of
 * t = (x − centre)/halfWidth in [−1, 1], where every coefficient is a projection of its own; the projections are repeated
 * on the residuals until they change nothing; residuals and the way back to powers of x are in double-double arithmetic.
 * With A0 held at 0 the model is y = u·q(t), u = x/size, and q is fitted with weights u²: the same problem one degree lower.
 * Digits reached on the NIST StRD sets: see test/metrology/strd.test.ts.
 *
 * @param x abscissas, any order, repeats allowed
 * @param y ordinates, as many
 * @param degree 1 to 5
 * @throws MetrologyError if there are fewer different abscissas than coefficients, or they lie too close to tell apart
 */
export function fitPolynomial(x: readonly number[], y: readonly number[], degree: number, options: FitOptions = {}): PolynomialFit {
  const { constant = true, abscissa = 'force' } = options;
  requireDistinct(x, degree, constant, abscissa);
  const model = modelOf(x, degree, constant);
  const solution = model && project(model, y);
  if (!solution) {
    throw badInput(`${abscissa}s too close together, or numbers too large or too small, to fit a polynomial of degree ${degree}`);
  }
  const statistics = statisticsOf(y, solution.residuals, degree, constant);
  const rows = powersOfX(model);
  const column = (power: number) => rows.map((row) => row[power] ?? exact(0));
  const powers = Array.from({ length: degree + 1 }, (_, power) => power);
  return {
    degree, constant, residuals: solution.residuals, ...statistics,
    coefficients: powers.map((power) => column(power).reduce((sum, c, k) => add(sum, multiply(c, solution.inBasis[k])), exact(0))[0]),
    standardErrors: powers.map((power) => {
      if (statistics.residualSd === undefined || (power === 0 && !constant)) return undefined;
      return statistics.residualSd * Math.sqrt(column(power).reduce((sum, [c], k) => sum + (c * c) / model.basis.norms[k], 0));
    }),
    leverage: (at) => leverageAt(model, at),
  };
}

function requireDistinct(x: readonly number[], degree: number, constant: boolean, abscissa: string): void {
  const needed = degree + (constant ? 1 : 0);
  const distinct = new Set(x);
  if (!constant) distinct.delete(0);
  if (distinct.size < needed) {
    throw badInput(`found ${counted(distinct.size, `different ${constant ? '' : 'non-zero '}${abscissa}`)}; a polynomial of degree ${degree} needs at least ${needed}`);
  }
}

/** The fit as a projection: y = u·Σ b(k)·p(k)(t), u = 1 with a constant term. */
interface Model {
  readonly scaling: Scaling;
  readonly basis: OrthogonalBasis;
  /** What x is divided by in u; 0 stands for u = 1. */
  readonly size: number;
  readonly t: readonly DoubleDouble[];
  readonly u: readonly DoubleDouble[];
}

function modelOf(x: readonly number[], degree: number, constant: boolean): Model | undefined {
  const scaling = scalingOf(x);
  const size = constant ? 0 : x.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const t = x.map((value) => scaled(scaling, value));
  const u = x.map((value) => (constant ? exact(1) : divide(exact(value), size)));
  const basis = orthogonalBasis(t.map(([high]) => high), u.map(([high]) => high * high), constant ? degree : degree - 1);
  return basis && { scaling, basis, size, t, u };
}

const PASSES = 6;

/** Projects y on the basis, and what is left, until nothing changes; undefined if that does not settle. */
function project({ basis, t, u }: Model, y: readonly number[]) {
  const values = t.map((at, i) => exactBasisValues(basis, at).map((value) => multiply(u[i], value)));
  let inBasis: DoubleDouble[] = basis.norms.map(() => exact(0));
  let left = y.map(exact);
  for (let pass = 0; pass < PASSES; pass += 1) {
    const correction = basis.norms.map((norm, k) => divide(dot(left, values, k), norm));
    inBasis = inBasis.map((coefficient, k) => add(coefficient, correction[k]));
    left = values.map((row, i) => row.reduce((rest, value, k) => add(rest, negated(multiply(inBasis[k], value))), exact(y[i])));
    if (!left.every(([high]) => Number.isFinite(high))) return undefined;
    const allowed = pass === PASSES - 1 ? 1e-15 : 1e-25; // the last pass may leave what a double cannot hold
    if (lengthOf(correction, basis) <= allowed * lengthOf(inBasis, basis)) return { inBasis, residuals: left.map(([high]) => high) };
  }
  return undefined;
}

/** Σ left(i)·value(i, k) */
function dot(left: readonly DoubleDouble[], values: readonly (readonly DoubleDouble[])[], k: number): DoubleDouble {
  return left.reduce((sum, rest, i) => add(sum, multiply(rest, values[i][k])), exact(0));
}

/** Root sum of squares of a polynomial's values over the points. */
function lengthOf(inBasis: readonly DoubleDouble[], { norms }: OrthogonalBasis): number {
  return Math.sqrt(inBasis.reduce((sum, [coefficient], k) => sum + coefficient * coefficient * norms[k], 0));
}

/** Each u·p(k) in powers of x, constant first. */
function powersOfX({ scaling, basis, size }: Model): DoubleDouble[][] {
  const inX = basisPowers(basis).map((inT) => expanded(scaling, inT));
  if (size === 0) return inX;
  return inX.map((row) => [exact(0), ...row.map((c) => divide(c, size))]);
}

function leverageAt({ scaling, basis, size }: Model, x: number): number {
  const u = size === 0 ? 1 : x / size;
  return basisValues(basis, (x - scaling.centre) / scaling.halfWidth)
    .reduce((sum, value, k) => sum + (u * value) ** 2 / basis.norms[k], 0);
}

function statisticsOf(y: readonly number[], residuals: readonly number[], degree: number, constant: boolean) {
  const n = y.length;
  const dof = n - degree - (constant ? 1 : 0);
  const sumOfSquares = sum(residuals.map((residual) => residual * residual));
  const mean = constant ? y[0] + sum(y.map((value) => value - y[0])) / n : 0;
  const total = sum(y.map((value) => (value - mean) ** 2));
  return {
    n, dof, sumOfSquares,
    residualSd: dof > 0 ? Math.sqrt(sumOfSquares / dof) : undefined,
    rSquared: total > 0 ? 1 - sumOfSquares / total : undefined,
  };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
