import type { Proving, ProvingFigures } from './forceProving';
import { PROVING_PARAMETERS, type ProvingClass, type ProvingLimits, type ProvingParameter } from './forceProvingLimits';

/** What is known of the instrument beside its series; what is left out is not judged. */
export interface ProvingTests {
  /** r, force units. */
  readonly resolution?: number;
  /** f0, fraction. */
  readonly zero?: number;
  /** c, fraction. Given, the class is for increasing forces only and stands on c instead of v. */
  readonly creep?: number;
}

/** A limit that is not kept: fractions; or the force itself, as a share of the greatest, below the least share allowed. */
export interface Breach {
  readonly parameter: ProvingParameter | typeof LOW_FORCE;
  readonly found: number;
  readonly limit: number;
}

/** The class at one force. */
export interface ClassAtForce {
  readonly force: number;
  /** Undefined if no class is met. */
  readonly name: string | undefined;
  /** What keeps it from the next better class; undefined in the best. */
  readonly breach: Breach | undefined;
  /** Limited parameters of which nothing is known. */
  readonly notJudged: readonly string[];
}

/** The range of forces over which a class holds. */
export interface ClassRange {
  readonly name: string;
  /** Undefined if the class is not met. */
  readonly range: { readonly from: number; readonly to: number } | undefined;
  /** What keeps the range from reaching lower; undefined if it starts at the lowest force applied. */
  readonly breach: (Breach & { readonly force: number }) | undefined;
  readonly notJudged: readonly string[];
}

/** A force below 2 % of the greatest has no class. Source: ISO 376:2011 (from memory). */
export const LOW_FORCE = 'F/F_N';
const LEAST_SHARE = 0.02;
/** A class holds over 50 % to 100 % of the greatest force at least. Source: ISO 376:2011 (from memory). */
const SHARE_TO_HOLD = 0.5;
/** Rounding of a spreadsheet must not break a limit that is met exactly: 1e-10 %. */
const ROUNDING = 1e-12;

/**
 * The best class met at each force, forces rising.
 * @param classes best first
 * Source: ISO 376:2011 (from memory).
 */
export function classAtForces(proving: Proving, tests: ProvingTests, classes: readonly ProvingClass[]): ClassAtForce[] {
  return proving.figures.map((figures) => {
    const breaches = classes.map(({ limits }) => worstBreach(proving, figures, tests, limits));
    const met = breaches.indexOf(undefined);
    const better = met < 0 ? breaches.length - 1 : met - 1;
    const judged = met < 0 ? classes.length - 1 : met;
    return {
      force: figures.step.force,
      name: classes[met]?.name,
      breach: breaches[better],
      notJudged: notJudged(proving, figures, tests, classes[judged].limits),
    };
  });
}

/**
 * For each class the range from its lowest force to the greatest, without a gap, over 50 % to 100 % of the greatest at least.
 * Source: ISO 376:2011 (from memory).
 */
export function classRanges(proving: Proving, tests: ProvingTests, classes: readonly ProvingClass[]): ClassRange[] {
  const falling = [...proving.figures].reverse();
  return classes.map(({ name, limits }) => {
    const breaches = falling.map((figures) => worstBreach(proving, figures, tests, limits));
    const stop = breaches.findIndex((breach) => breach !== undefined);
    const held = stop < 0 ? falling : falling.slice(0, stop);
    const lowest = held.at(-1)?.step.force ?? Infinity;
    const { greatestForce } = proving;
    return {
      name,
      range: lowest <= (SHARE_TO_HOLD + ROUNDING) * greatestForce ? { from: lowest, to: greatestForce } : undefined,
      breach: stop < 0 ? undefined : { ...(breaches[stop] as Breach), force: falling[stop].step.force },
      notJudged: [...new Set(held.flatMap((figures) => notJudged(proving, figures, tests, limits)))],
    };
  });
}

/** The limit most exceeded, in proportion; undefined if all are kept. */
function worstBreach(proving: Proving, figures: ProvingFigures, tests: ProvingTests, limits: ProvingLimits): Breach | undefined {
  const share = figures.step.force / proving.greatestForce;
  if (share < LEAST_SHARE - ROUNDING) return { parameter: LOW_FORCE, found: share, limit: LEAST_SHARE };
  const values = judgedValues(figures, tests);
  let worst: Breach | undefined;
  for (const parameter of PROVING_PARAMETERS) {
    const found = values[parameter];
    const limit = limits[parameter];
    if (found === undefined || limit === undefined || Math.abs(found) <= limit + ROUNDING) continue;
    if (!worst || Math.abs(found) * worst.limit > Math.abs(worst.found) * limit) worst = { parameter, found, limit };
  }
  return worst;
}

/** Either c (increasing forces only) or v (increasing and decreasing) is judged. */
function judgedValues({ step, ...figures }: ProvingFigures, { resolution, zero, creep }: ProvingTests): Partial<Record<ProvingParameter, number>> {
  return {
    b: figures.reproducibility,
    'b′': figures.repeatability,
    fc: figures.interpolation,
    f0: zero,
    v: creep === undefined ? figures.reversibility : undefined,
    c: creep,
    'U of force': step.forceUncertainty,
    'r/F': resolution === undefined ? undefined : resolution / step.force,
  };
}

/** At the greatest force nothing decreases yet, so that v may be missing there. */
function notJudged({ figures: all, greatestForce }: Proving, figures: ProvingFigures, tests: ProvingTests, limits: ProvingLimits): string[] {
  const values = judgedValues(figures, tests);
  const single = (['f0', 'U of force', 'r/F'] as const).filter((parameter) => limits[parameter] !== undefined && values[parameter] === undefined);
  const either = limits.v !== undefined || limits.c !== undefined;
  if (!either || values.v !== undefined || values.c !== undefined) return single;
  if (all.every(({ reversibility }) => reversibility === undefined)) return ['v or c', ...single];
  return figures.step.force === greatestForce ? single : ['v', ...single];
}
