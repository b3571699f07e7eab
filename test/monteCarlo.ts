/**
 * Propagation of distributions by drawing (JCGM 101), for tests: what the components of a budget come to if each is drawn from
 * its own distribution, against which the expanded uncertainty of the guide (JCGM 100) is held.
 */
import { DIVISORS, standardUncertainty, type Distribution } from '../src/metrology/standardUncertainty';
import type { UncertaintyComponent } from '../src/metrology/combinedUncertainty';
import { randomDraws, type RandomDraws } from './randomDraws';

/** Held here because a lookup of the global Math is slow inside the sandbox that jest runs tests in. */
const { PI, sin } = Math;

/** One line of a budget; it has either a half-width or a standard uncertainty. */
export interface BudgetLine {
  readonly name: string;
  readonly distribution: Distribution;
  /** As STANDARDU takes it: for "normal" the expanded uncertainty (k = 2), for "resolution" the full step. */
  readonly halfWidth?: number;
  readonly standardUncertainty?: number;
  /** 1 if left out. */
  readonly sensitivity?: number;
  /** Degrees of freedom of a normal component, which is then drawn from Student's t (JCGM 101, 6.4.9). */
  readonly dof?: number;
}

export interface SimulationOptions {
  /** 10⁶ if left out: enough for the ends of the interval to 0.3 %. */
  readonly draws?: number;
  readonly seed?: number;
  /** Of the coverage interval; 0.9545 if left out. */
  readonly probability?: number;
}

/** What the draws show. */
export interface Simulation {
  readonly standardDeviation: number;
  /** Ends of the probabilistically symmetric coverage interval, about an estimate of 0. */
  readonly lower: number;
  readonly upper: number;
  /** Half the length of that interval: what U is to be compared with. */
  readonly halfWidth: number;
  /** Share of the draws within ± U. */
  coverage(expanded: number): number;
}

/** The budget as UNCERTAINTY takes it: sensitivity times standard uncertainty, with degrees of freedom. */
export function componentsOf(budget: readonly BudgetLine[]): UncertaintyComponent[] {
  return budget.map((line) => ({ value: (line.sensitivity ?? 1) * standardOf(line), dof: line.dof ?? Infinity, place: line.name }));
}

/** Draws every component from its distribution and adds them, times their sensitivities. */
export function simulate(budget: readonly BudgetLine[], options: SimulationOptions = {}): Simulation {
  const { draws = 1_000_000, seed = 1, probability = 0.9545 } = options;
  const random = randomDraws(seed);
  const results = new Float64Array(draws);
  for (const line of budget) {
    const draw = drawerOf(line, random);
    const scale = (line.sensitivity ?? 1) * standardOf(line);
    for (let i = 0; i < draws; i += 1) results[i] += scale * draw();
  }
  results.sort();
  const [lower, upper] = [(1 - probability) / 2, (1 + probability) / 2].map((share) => results[Math.round(share * (draws - 1))]);
  return {
    lower, upper,
    standardDeviation: Math.sqrt(results.reduce((sum, result) => sum + result * result, 0) / draws),
    halfWidth: (upper - lower) / 2,
    coverage: (expanded) => (firstAbove(results, expanded) - firstAbove(results, -expanded)) / draws,
  };
}

function standardOf({ name, distribution, halfWidth, standardUncertainty: standard }: BudgetLine): number {
  if ((halfWidth === undefined) === (standard === undefined)) throw new Error(`${name}: expected either a half-width or a standard uncertainty`);
  return standard ?? standardUncertainty(halfWidth as number, distribution);
}

/** Draws with the shape of the line's distribution and a standard deviation of 1 (t: a scale of 1). */
function drawerOf({ name, distribution, dof }: BudgetLine, random: RandomDraws): () => number {
  if (dof !== undefined && distribution !== 'normal') throw new Error(`${name}: degrees of freedom are drawn for "normal" only`);
  switch (distribution) {
    case 'normal':
      return dof === undefined ? () => random.normal() : () => random.t(dof);
    case 'triangular':
      return () => DIVISORS.triangular * (random.uniform() + random.uniform() - 1);
    case 'ushaped':
      return () => DIVISORS.ushaped * sin(PI * (random.uniform() - 0.5));
    case 'rectangular':
    case 'resolution':
      return () => DIVISORS.rectangular * (2 * random.uniform() - 1);
  }
}

/** How many of the sorted draws are at most the given value. */
function firstAbove(sorted: Float64Array, value: number): number {
  let [from, to] = [0, sorted.length];
  while (from < to) {
    const middle = (from + to) >>> 1;
    if (sorted[middle] <= value) from = middle + 1;
    else to = middle;
  }
  return from;
}
