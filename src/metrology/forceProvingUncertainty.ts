import type { Proving, ProvingFigures } from './forceProving';
import type { ProvingTests } from './forceProvingClass';

/** Coverage factor of W. */
const COVERAGE = 2;

/** What the uncertainty knows beside the series. */
export interface UncertaintyTests extends ProvingTests {
  /** K·ΔT: temperature coefficient of sensitivity times the span of temperature in use, fraction. */
  readonly temperature?: number;
}

/** Relative uncertainty at one force; fractions. */
export interface ProvingUncertainty {
  readonly force: number;
  /** w1 … w8; undefined where nothing is known, and counted as 0. */
  readonly components: readonly (number | undefined)[];
  /** wc = √Σw² */
  readonly combined: number;
  /** W = 2·wc */
  readonly expanded: number;
}

/**
 * Relative standard uncertainties w1 … w8 at each force, wc and W = 2·wc. Fractions, forces rising.
 *
 * w1 = W_force/2 · w2 = √(Σ(Xi − Xr)²/6)/|Xr| over X1, X3, X5 · w3 = b′/√3 · w4 = r/(F·√6) · w5 = c/√3, or v/(3·√3) without c ·
 * w6 = f0 · w7 = K·ΔT/(2·√3) · w8 = (F_N/F)·√(δr/(n − d − 1))/|X_N|, δr the residual sum of squares.
 * Where v is missing (as a rule at the greatest force) the v of the nearest force below stands in, else of the nearest above.
 * Source: ISO 376:2011 Annex C (from memory); the stand-in for v is ours.
 */
export function provingUncertainty(proving: Proving, tests: UncertaintyTests): ProvingUncertainty[] {
  return proving.figures.map((figures, i) => {
    const { force, forceUncertainty } = figures.step;
    const components = [
      forceUncertainty === undefined ? undefined : forceUncertainty / 2,
      scatter(figures),
      figures.repeatability / Math.sqrt(3),
      tests.resolution === undefined ? undefined : tests.resolution / (force * Math.sqrt(6)),
      creepComponent(proving, i, tests.creep),
      tests.zero === undefined ? undefined : Math.abs(tests.zero),
      tests.temperature === undefined ? undefined : Math.abs(tests.temperature) / (2 * Math.sqrt(3)),
      lackOfInterpolation(proving, force),
    ];
    const combined = Math.hypot(...components.map((component) => component ?? 0));
    return { force, components, combined, expanded: COVERAGE * combined };
  });
}

function scatter({ step: { x1, x3, x5 }, mean }: ProvingFigures): number {
  return Math.hypot(x1 - mean, x3 - mean, x5 - mean) / Math.sqrt(6) / Math.abs(mean);
}

function creepComponent({ figures }: Proving, index: number, creep: number | undefined): number | undefined {
  if (creep !== undefined) return creep / Math.sqrt(3);
  const known = ({ reversibility }: ProvingFigures) => reversibility !== undefined;
  const nearest = figures.slice(0, index + 1).findLast(known) ?? figures.slice(index).find(known);
  return nearest && (nearest.reversibility as number) / (3 * Math.sqrt(3));
}

function lackOfInterpolation({ fit, greatestForce, greatestDeflection }: Proving, force: number): number {
  return ((greatestForce / force) * Math.sqrt(fit.sumOfSquares / fit.dof)) / Math.abs(greatestDeflection);
}
