import { badInput } from './errors';
import { evaluate } from './polynomial';
import { fitPolynomial } from './polynomialFit';

/** Forms of the uncertainty equation: W = a0 + a1/F, W = a0 + a1·F, W = a0 + a1·F + a2·F². */
export const EQUATION_FORMS = ['inverse', 'linear', 'quadratic'] as const;
export type EquationForm = (typeof EQUATION_FORMS)[number];

/** Relative expanded uncertainty at a force. */
export interface UncertaintyPoint {
  /** Magnitude, > 0. */
  readonly force: number;
  /** W, fraction. */
  readonly uncertainty: number;
}

/** W as a function of force. */
export interface UncertaintyEquation {
  /** a0, a1 and, in the quadratic form, a2; a0 a fraction, the others per power of the force unit. */
  readonly coefficients: readonly number[];
  /** Greatest W − fitted W, ≥ 0, and the force where it occurs. */
  readonly shortfall: number;
  readonly shortfallAt: number;
  /** a0 + shortfall: with it the equation is at no force below the W worked out there. */
  readonly coveringConstant: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Least-squares equation for the relative expanded uncertainty W over force, from its values at the calibration forces.
 * The inverse form fits what W is made of: parts in proportion to force (constant in W) and parts of constant size (resolution,
 * interpolation: 1/F in W). Then W·F = a0·F + a1, a straight line in the unit of force.
 * Source: ISO 376:2011 Annex C asks for a best fit whose form follows the results, made safer where it lies below them (from
 * memory); the inverse form is ours.
 * @throws MetrologyError if the forces are fewer than the coefficients
 */
export function uncertaintyEquation(points: readonly UncertaintyPoint[], form: EquationForm): UncertaintyEquation {
  if (points.length === 0) throw badInput('uncertainties: found none at a force other than 0; expected W at each force');
  const forces = points.map(({ force }) => force);
  const to = forces.reduce((most, force) => Math.max(most, force));
  const from = forces.reduce((least, force) => Math.min(least, force));
  // In shares of the greatest force, so that 1/F neither overflows nor vanishes with the unit.
  const abscissas = forces.map((force) => (form === 'inverse' ? to / force : force / to));
  const fit = fitPolynomial(abscissas, points.map(({ uncertainty }) => uncertainty), form === 'quadratic' ? 2 : 1);
  const misses = abscissas.map((at, i) => points[i].uncertainty - evaluate(fit.coefficients, at));
  const worst = misses.indexOf(misses.reduce((most, miss) => Math.max(most, miss)));
  const shortfall = Math.max(0, misses[worst]);
  return {
    coefficients: fit.coefficients.map((a, power) => (form === 'inverse' ? a * to ** power : a / to ** power)),
    shortfall,
    shortfallAt: forces[worst],
    coveringConstant: fit.coefficients[0] + shortfall,
    from, to,
  };
}
