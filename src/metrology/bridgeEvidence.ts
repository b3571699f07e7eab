import type { Arms } from './bridgeArms';
import { bridgeOutput } from './bridgeOutput';

/** Where the ordinary ends; every one is common practice, none is from a standard. */
export interface EvidenceLimits {
  /** Zero, fraction of rated output. */
  readonly zero: number;
  /** An arm against the mean of the four, fraction. */
  readonly arm: number;
  /** The mean of the four arms against nominal, fraction. */
  readonly mean: number;
  /** An arm against the mean of the other three beyond which it is taken as a fault, fraction. */
  readonly fault: number;
  /** Zero read against the zero that the arms imply, fraction of rated output. */
  readonly disagreement: number;
}

/** Common practice, no source. */
export const EVIDENCE_LIMITS: EvidenceLimits = { zero: 0.02, arm: 0.0001, mean: 0.02, fault: 0.02, disagreement: 0.02 };

/** What pattern the four arms show. */
export type ArmPattern =
  /** None differs from the mean by more than the limit. */
  | 'alike'
  /** One differs from the other three by more than the fault limit. */
  | 'one far off'
  /** One only differs from the mean of the others by more than the limit, the others agree among themselves. */
  | 'one off'
  /** Arms 1 and 3 lie to one side of arms 2 and 4: as load drives them. */
  | 'as under load'
  /** Neighbouring arms lie to one side of the other two: no load does that. */
  | 'neighbours'
  | 'none';

/** The numbers of a bridge at receipt, compared. What they may mean is worded elsewhere. */
export interface BridgeEvidence {
  /** Zero, fraction of rated output: positive in the direction in which the rated output is taken. */
  readonly zero: number;
  /** Each arm against the mean of the four, fraction. */
  readonly deviations: readonly number[];
  /** Mean of the arms against nominal, fraction. */
  readonly mean: number;
  readonly pattern: ArmPattern;
  /** Arms, counted from 1, that lie above the others in the pattern, and below; of one arm that is off only that arm. */
  readonly high: readonly number[];
  readonly low: readonly number[];
  /** Zero that the arms imply, mV/V. */
  readonly implied: number;
  /** Zero read less zero implied, fraction of rated output. */
  readonly disagreement: number;
}

/**
 * Compares the arms of a bridge with each other, with nominal and with its zero.
 * @param arms ohms, numbered as for `Arms`
 * @param nominal arm resistance as specified, ohms
 * @param zero output without load as received, mV/V
 * @param ratedOutput mV/V, with its sign in the direction that counts as tension
 * Source: common practice.
 */
export function bridgeEvidence(
  arms: Arms, nominal: number, zero: number, ratedOutput: number, limits: EvidenceLimits = EVIDENCE_LIMITS,
): BridgeEvidence {
  const mean = arms.reduce((sum, arm) => sum + arm / 4, 0);
  const implied = bridgeOutput(arms);
  return {
    zero: zero / ratedOutput,
    deviations: arms.map((arm) => (arm - mean) / mean),
    mean: (mean - nominal) / nominal,
    ...patternOf(arms, mean, limits),
    implied,
    disagreement: (zero - implied) / ratedOutput,
  };
}

type Pattern = Pick<BridgeEvidence, 'pattern' | 'high' | 'low'>;

function patternOf(arms: Arms, mean: number, limits: EvidenceLimits): Pattern {
  const band = limits.arm * mean;
  const farthest = indexOfFarthest(arms, mean);
  const others = arms.filter((_, i) => i !== farthest);
  const beside = others.reduce((sum, arm) => sum + arm / 3, 0);
  const off = arms[farthest] - beside;
  const alone = (pattern: ArmPattern): Pattern => ({ pattern, high: off > 0 ? [farthest + 1] : [], low: off > 0 ? [] : [farthest + 1] });
  if (Math.abs(off) > limits.fault * beside) return alone('one far off');
  if (arms.every((arm) => Math.abs(arm - mean) <= band)) return { pattern: 'alike', high: [], low: [] };
  if (Math.max(...others) - Math.min(...others) <= band && Math.abs(off) > 2 * band) return alone('one off');
  return pairs(arms, band);
}

function indexOfFarthest(arms: Arms, mean: number): number {
  const distances = arms.map((arm) => Math.abs(arm - mean));
  return distances.indexOf(Math.max(...distances));
}

/** The two arms that lie above the other two by more than the band, and by more than the arms of either pair differ. */
function pairs(arms: Arms, band: number): Pattern {
  const order = [0, 1, 2, 3].sort((a, b) => arms[b] - arms[a]);
  const [above, between, below] = [0, 1, 2].map((i) => arms[order[i]] - arms[order[i + 1]]);
  if (!(between > Math.max(band, above, below))) return { pattern: 'none', high: [], low: [] };
  const numbered = (places: readonly number[]) => places.map((i) => i + 1).sort();
  const [high, low] = [numbered(order.slice(0, 2)), numbered(order.slice(2))];
  return { pattern: high[1] - high[0] === 2 ? 'as under load' : 'neighbours', high, low };
}
