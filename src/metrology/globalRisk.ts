import { badInput } from './errors';
import { requireLimits, type Limits } from './limits';
import { between, outside } from './normalInterval';
import { integrate } from './quadrature';

/** Risks of an inspection, before anything is measured: probabilities among all items. */
export interface GlobalRisk {
  /** Out of tolerance and accepted. */
  readonly consumer: number;
  /** In tolerance and rejected. */
  readonly producer: number;
}

/** Items as they come, and the measurement that judges them; both normal, one and the same unit. */
export interface Inspection {
  readonly mean: number;
  /** Standard deviation of the items, above 0. */
  readonly sd: number;
  /** Standard uncertainty of the measurement, above 0. */
  readonly u: number;
}

/** Standard deviations beyond which a normal tail, 1e-19, no longer counts. */
const REACH = 9;

/**
 * Global consumer's and producer's risk. With z = (item − mean)/sd and the acceptance limits likewise reduced:
 * consumer = ∫ φ(z)·P(accepted | z) over z out of tolerance, producer = ∫ φ(z)·P(rejected | z) over z in tolerance.
 *
 * The domain is cut to |z| ≤ 9 and into panels no wider than one standard deviation of the items, and near an acceptance
 * limit no wider than one of the measurement, with borders at the limits. On such a panel the integrand is a Gaussian over at
 * most one of its own widths, and 20 Gauss–Legendre points give it to rounding; the error is well below 1e-12.
 *
 * @param tolerance limits of the items; at least one
 * @param acceptance limits for measured values; at least one
 * Source: JCGM 106, 9.5.
 */
export function globalRisk(tolerance: Limits, acceptance: Limits, { mean, sd, u }: Inspection): GlobalRisk {
  requireLimits(tolerance, ['lower', 'upper']);
  requireLimits(acceptance, ['acceptLower', 'acceptUpper']);
  if (!(sd > 0)) throw badInput(`priorSd: found ${sd}; expected a standard deviation above 0`);
  if (!(u > 0)) throw badInput(`u: found ${u}; expected a standard uncertainty above 0`);
  const ratio = u / sd;
  if (!(ratio > 1e-100 && ratio < 1e100)) throw badInput(`u: found ${u}, with priorSd ${sd}; expected two numbers of comparable size`);

  const reduced = (limit: number) => (limit - mean) / sd;
  const [low, high] = ends(tolerance).map(reduced);
  const [acceptLow, acceptHigh] = ends(acceptance).map(reduced);
  const panels = bordersOf([low, high], [acceptLow, acceptHigh], ratio);
  const accepted = (z: number) => density(z) * between((acceptLow - z) / ratio, (acceptHigh - z) / ratio);
  const rejected = (z: number) => density(z) * outside((acceptLow - z) / ratio, (acceptHigh - z) / ratio);
  return {
    consumer: integrate(accepted, panels.filter((z) => z <= low)) + integrate(accepted, panels.filter((z) => z >= high)),
    producer: integrate(rejected, panels.filter((z) => z >= low && z <= high)),
  };
}

function ends({ lower = -Infinity, upper = Infinity }: Limits): [number, number] {
  return [lower, upper];
}

function density(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Borders of the panels: whole z, the limits, and whole standard uncertainties about the acceptance limits. */
function bordersOf(tolerance: readonly number[], acceptance: readonly number[], ratio: number): number[] {
  const steps = Array.from({ length: 2 * REACH + 1 }, (_, i) => i - REACH);
  const all = [...steps, ...tolerance, ...acceptance.flatMap((limit) => steps.map((step) => limit + step * ratio))];
  return [...new Set(all)].filter((z) => Math.abs(z) <= REACH).sort((a, b) => a - b);
}
