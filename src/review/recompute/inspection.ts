import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import type { Expected } from './expected';
import { Expectations } from './expectations';

const STEPS = 60;

/** The arms of a bridge from its corners, what they imply, and zero and shunt against it. */
export function inspectionExpected(sheet: ReviewedSheet): readonly Expected[] {
  const expect = new Expectations(sheet);
  const [zero, then, rated, resistance] = ['zero_now', 'zero_then', 'rated_output', 'resistance'].map((name) => sheet.number(name));
  const corners = sheet.all('corners').map(numberIn);
  const known = corners.length === 4 && corners.every((corner) => corner !== undefined);
  const arms = known ? armsOf(corners as number[]) : undefined;
  const ofRated = (value: number | undefined) => (value === undefined || rated === undefined ? null : value / rated);
  expect.result('zero_balance', ofRated(zero)).result('zero_shift', ofRated(zero === undefined || then === undefined ? undefined : zero - then));
  if (!known) ['arm_1', 'arm_2', 'arm_3', 'arm_4', 'diagonal_input', 'diagonal_output', 'zero_implied', 'zero_difference'].forEach((id) => expect.result(id, null));
  if (arms) ofArms(expect, arms, zero, ofRated);
  const shunt = sheet.number('shunt_resistor');
  const change = sheet.number('shunt_change');
  const expected = shunt === undefined || resistance === undefined ? null : (1000 * resistance) / (4 * shunt + 2 * resistance);
  expect.result('shunt_expected', expected).result('shunt', expected === null || change === undefined ? null : Math.abs(change) / expected - 1);
  return expect.list;
}

function ofArms(expect: Expectations, arms: readonly number[], zero: number | undefined, ofRated: (value: number | undefined) => number | null): void {
  const [r1, r2, r3, r4] = arms;
  arms.forEach((arm, i) => expect.result(`arm_${i + 1}`, arm, { scale: arm }));
  const [input, output] = expect.sheet.all('corners_opposite').map(numberIn);
  const across = (read: number | undefined, a: number, b: number) => (read === undefined ? null : (read * (a + b)) / (a * b) - 1);
  expect.result('diagonal_input', across(input, r1 + r2, r3 + r4)).result('diagonal_output', across(output, r2 + r3, r4 + r1));
  const implied = (1000 * (r1 * r3 - r2 * r4)) / ((r1 + r2) * (r3 + r4));
  // Nearly equal products cancel: what is left is good to the rounding of the products.
  expect.result('zero_implied', implied, { scale: 1000 }).result('zero_difference', ofRated(zero === undefined ? undefined : zero - implied), { scale: 1000 });
}

/**
 * Arms whose corners read r: each is R = (1 − √(1 − 4·r·u))/(2·u), u = 1/ΣR, and Σ√(1 − 4·r·u) = 2, solved for u by Newton's
 * steps from equal arms. Undefined where an arm is greater than the other three together, which this form does not cover.
 */
function armsOf(corners: readonly number[]): readonly number[] | undefined {
  let u = 3 / (4 * corners.reduce((sum, r) => sum + r, 0));
  for (let step = 0; step < STEPS; step += 1) {
    const roots = corners.map((r) => Math.sqrt(1 - 4 * r * u));
    const change = (roots.reduce((sum, root) => sum + root, -2)) / corners.reduce((sum, r, i) => sum + (2 * r) / roots[i], 0);
    if (!Number.isFinite(change)) return undefined;
    u += change;
    if (Math.abs(change) < 1e-16 * u) break;
  }
  const arms = corners.map((r) => (2 * r) / (1 + Math.sqrt(1 - 4 * r * u)));
  const sum = arms.reduce((all, arm) => all + arm, 0);
  return Math.abs(sum * u - 1) < 1e-9 ? arms : undefined;
}
