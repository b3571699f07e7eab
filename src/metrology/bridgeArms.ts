import { bisect } from './bisection';
import { badInput } from './errors';

/**
 * The four arms of a bridge, ohms, in order around it. Corners are numbered 1 to 4 in the same order: arm 1 lies between
 * corners 1 and 2, arm 2 between 2 and 3, arm 3 between 3 and 4, arm 4 between 4 and 1. Excitation is on 1 (+) and 3 (−),
 * signal on 4 (+) and 2 (−), so that the output rises with arms 1 and 3 and falls with arms 2 and 4.
 */
export type Arms = readonly [number, number, number, number];

/**
 * Arm resistances from the four resistances measured between neighbouring corners, the other corners open.
 *
 * A corner resistance is r = R·(S − R)/S, S = ΣR. The arm with the greatest r has R = S·(1 − t)/2 and S = 4·r/(1 − t²); every
 * other arm is at most S/2, so it follows from S. What is left is one equation for t in (−1, 1), ΣR = S: it changes sign
 * once, and is bisected to the last bit. Each set of four corner resistances has one set of arms, or none.
 *
 * @param corners between 1 and 2, 2 and 3, 3 and 4, 4 and 1; ohms, greater than 0
 * @throws MetrologyError (input) if one is not less than the sum of the others, which no bridge gives
 * Source: derived from series and parallel resistances.
 */
export function bridgeArms(corners: Arms): Arms {
  const greatest = corners.indexOf(Math.max(...corners));
  const ratios = corners.map((r) => r / corners[greatest]);
  const others = ratios.filter((_, i) => i !== greatest);
  if (others.reduce((sum, ratio) => sum + ratio, 0) <= 1) {
    throw badInput(
      `corner resistances: found ${corners[greatest]} between corners ${CORNERS[greatest]}, not less than the sum of the other three; ` +
        'no bridge of four arms gives that. Expected the resistance between neighbouring corners, nothing else connected',
    );
  }
  const shares = (t: number) => ratios.map((ratio, i) => (i === greatest ? (1 - t) / 2 : shareOfSum(ratio, t)));
  const { near: t } = bisect((at) => shares(at).reduce((sum, share) => sum + share, -1) < 0, 1, -1);
  const sum = (4 * corners[greatest]) / ((1 - t) * (1 + t));
  return shares(t).map((share) => share * sum) as unknown as Arms;
}

/** Neighbouring corners as messages name them, in the order of the arms. */
export const CORNERS = ['1 and 2', '2 and 3', '3 and 4', '4 and 1'] as const;

/** R/S of an arm below S/2 whose corner resistance is the given part of the greatest: (1 − √(1 − ratio·(1 − t²)))/2. */
function shareOfSum(ratio: number, t: number): number {
  const part = ratio * (1 - t) * (1 + t);
  return part / (2 * (1 + Math.sqrt(1 - ratio + ratio * t * t)));
}

/**
 * Resistance across each diagonal, ohms: between corners 1 and 3 (input) and between 2 and 4 (output), the others open.
 * Source: series and parallel resistances.
 */
export function diagonals([r1, r2, r3, r4]: Arms): { input: number; output: number } {
  const parallel = (a: number, b: number) => a / (1 + a / b);
  return { input: parallel(r1 + r2, r3 + r4), output: parallel(r2 + r3, r4 + r1) };
}
