import { badInput } from './errors';
import { fitPolynomial, type PolynomialFit } from './polynomialFit';
import { counted } from './wording';

/** The interpolation polynomial is of this degree at most. Source: ISO 376 (from memory). */
export const GREATEST_PROVING_DEGREE = 3;

/** Net readings of the series at one force, output units. */
export interface ProvingStep {
  /** Where it stands in the range, as messages name it. */
  readonly place: string;
  /** Magnitude of the applied force, > 0. */
  readonly force: number;
  /** Increasing forces, first position, and again. */
  readonly x1: number;
  readonly x2: number;
  /** Increasing forces, rotated positions. */
  readonly x3: number;
  readonly x5: number;
  /** Decreasing forces after X3 and after X5, if run. */
  readonly decreasing?: { readonly x4: number; readonly x6: number };
  /** Relative expanded uncertainty (k = 2) of the applied force, if known. */
  readonly forceUncertainty?: number;
}

/** Relative figures at one force: fractions. */
export interface ProvingFigures {
  readonly step: ProvingStep;
  /** Xr, mean of X1, X3, X5; output units. */
  readonly mean: number;
  /** Xa, from the interpolation polynomial; output units. */
  readonly fitted: number;
  /** b = (greatest − least of X1, X3, X5)/|Xr| */
  readonly reproducibility: number;
  /** b′ = |X2 − X1|/|Xwr|, Xwr = (X1 + X2)/2 */
  readonly repeatability: number;
  /** fc = (Xr − Xa)/Xa, signed */
  readonly interpolation: number;
  /** v = mean of |X4′ − X3|/|X3| and |X6′ − X5|/|X5|; undefined without decreasing forces */
  readonly reversibility: number | undefined;
}

/** A force-proving instrument reduced. */
export interface Proving {
  /** Forces rising. */
  readonly figures: readonly ProvingFigures[];
  /** Xr as a polynomial of force. */
  readonly fit: PolynomialFit;
  /** F_N, the greatest force applied. */
  readonly greatestForce: number;
  /** X_N, the mean deflection Xr at F_N; output units, signed. */
  readonly greatestDeflection: number;
}

/**
 * Reduces the series of a force-proving instrument: b, b′, fc, v at each force.
 * Xa comes from a polynomial of degree 1 to 3 with constant term, fitted to Xr by least squares.
 * Source: ISO 376:2011 (from memory).
 * @throws MetrologyError if a force stands twice, the forces are fewer than degree + 2, or a deflection is 0
 */
export function reduceProving(steps: readonly ProvingStep[], degree: number): Proving {
  const rising = [...steps].sort((a, b) => a.force - b.force);
  rising.forEach(({ place, force }, i) => {
    if (i > 0 && force === rising[i - 1].force) throw badInput(`forces: found ${force} twice (the second in ${place}); expected each force once`);
  });
  if (rising.length < degree + 2) {
    throw badInput(`found ${counted(rising.length, 'force')} with readings; degree ${degree} needs at least ${degree + 2}, or the fit says nothing of itself`);
  }
  const means = rising.map(meanDeflection);
  const fit = fitPolynomial(rising.map(({ force }) => force), means, degree);
  return {
    figures: rising.map((step, i) => figuresAt(step, means[i], means[i] - fit.residuals[i])),
    fit,
    greatestForce: rising[rising.length - 1].force,
    greatestDeflection: means[means.length - 1],
  };
}

/** Of equal readings exactly that reading. */
function meanDeflection({ x1, x3, x5 }: ProvingStep): number {
  return x1 + ((x3 - x1) + (x5 - x1)) / 3;
}

function figuresAt(step: ProvingStep, mean: number, fitted: number): ProvingFigures {
  const { x1, x2, x3, x5, decreasing } = step;
  const share = (difference: number, of: number, what: string) => difference / nonZero(of, what, step);
  return {
    step, mean, fitted,
    reproducibility: share(Math.max(x1, x3, x5) - Math.min(x1, x3, x5), Math.abs(mean), 'mean Xr'),
    repeatability: share(Math.abs(x2 - x1), Math.abs(x1 + (x2 - x1) / 2), 'mean of X1 and X2'),
    interpolation: share(mean - fitted, fitted, 'fitted Xa'),
    reversibility: decreasing
      && (share(Math.abs(decreasing.x4 - x3), Math.abs(x3), 'X3') + share(Math.abs(decreasing.x6 - x5), Math.abs(x5), 'X5')) / 2,
  };
}

function nonZero(value: number, what: string, { place, force }: ProvingStep): number {
  if (value === 0) throw badInput(`series ${place}: found a deflection of 0 (${what}) at force ${force}; expected an output under load`);
  return value;
}
