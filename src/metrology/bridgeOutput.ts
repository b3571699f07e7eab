import type { Arms } from './bridgeArms';

/**
 * Output of a bridge without load that its arms imply, mV/V: 1000·(R1·R3 − R2·R4)/((R1 + R2)·(R3 + R4)). Arms and sign as
 * for {@link Arms}: positive if arms 1 and 3 are the greater ones. Nothing draws current from the signal.
 * Source: Wheatstone bridge.
 */
export function bridgeOutput([r1, r2, r3, r4]: Arms): number {
  // As a sum over the two halves, so that the small output of nearly equal arms keeps its digits.
  return 500 * (lean(r1, r2) + lean(r3, r4));
}

/** (a − b)/(a + b) */
function lean(a: number, b: number): number {
  return (a / 2 - b / 2) / (a / 2 + b / 2);
}
