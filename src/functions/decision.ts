import { normalisedError, testRatio as testRatioOf } from '../metrology/comparison';
import { decide } from '../metrology/decision';
import type { Cell } from './cells';
import { CellFault } from './faults';
import { describe, isBlank, readNumber } from './readCell';
import { readTolerance } from './readLimits';

/** Rules that have a name, and the guard factor w/U each stands for. */
const GUARD_FACTORS = { simple: 0, guarded: 1 } as const;

/**
 * Statement of conformity of a measured value with its limits.
 * @customfunction DECISION
 * @group Uncertainty and decision
 * @param {any} value Measured value.
 * @param {any} [lower] Lower limit, units of the value; blank if there is none.
 * @param {any} [upper] Upper limit; blank if there is none. One of the two is needed.
 * @param {any} [U] Expanded uncertainty of the value, same units, 0 or more; needed.
 * @param {any} [rule] "simple" (default): pass within the limits, else fail; "guarded": guard band w = U; or a guard factor r of 0 or more: w = r·U.
 * @returns {any} "pass", "conditional pass", "conditional fail" or "fail"; without a guard band "pass" or "fail".
 * @formula d = distance from the nearer limit, positive inside
 * @formula d ≥ w: pass; 0 ≤ d < w: conditional pass; −w ≤ d < 0: conditional fail; d < −w: fail
 * @source ILAC-G8:09/2019, 4.2 (from memory); JCGM 106, clause 8
 * @note Agree the rule with the customer before the calibration, and state it with the result.
 * @example =PROVE.DECISION(9.97,9.9,10.1,0.05,"guarded") → "pass"
 * @example =PROVE.DECISION(10.08,"",10.1,0.05,"guarded") → "conditional pass"
 */
export function decision(value: any, lower?: any, upper?: any, U?: any, rule?: any): any {
  return decide(readNumber(value, 'value'), readTolerance(lower, upper), readNumber(U, 'U'), readGuardFactor(rule));
}

function readGuardFactor(cell: Cell): number {
  if (isBlank(cell)) return GUARD_FACTORS.simple;
  if (typeof cell === 'number') return readNumber(cell, 'rule');
  const word = typeof cell === 'string' ? cell.trim().toLowerCase() : '';
  if (word === 'simple' || word === 'guarded') return GUARD_FACTORS[word];
  throw new CellFault('#VALUE!', `rule: found ${describe(cell)}; expected "simple", "guarded" or a guard factor`);
}

/**
 * Test accuracy ratio: how many times the tolerance is wider than the uncertainty.
 * @customfunction TESTRATIO
 * @group Uncertainty and decision
 * @param {any} tolerance Half-width ± of the tolerance, above 0.
 * @param {any} U Expanded uncertainty, same units, above 0.
 * @returns {any} Ratio; 4 or more is often asked for simple acceptance.
 * @formula tolerance / U
 * @source JCGM 106, 7.6.5 (capability index of a symmetrical tolerance)
 * @example =PROVE.TESTRATIO(0.1,0.025) → 4
 */
export function testRatio(tolerance: any, U: any): any {
  return testRatioOf(readNumber(tolerance, 'tolerance'), readNumber(U, 'U'));
}

/**
 * Normalised error En of two results with their uncertainties.
 * @customfunction ENRATIO
 * @group Uncertainty and decision
 * @param {any} x1 Result that is compared.
 * @param {any} U1 Its expanded uncertainty (k = 2), same units, 0 or more.
 * @param {any} x2 Result that it is compared with.
 * @param {any} U2 Its expanded uncertainty (k = 2), 0 or more.
 * @returns {any} Signed ratio: positive if x1 is greater; from −1 to 1 the results agree.
 * @formula (x1 − x2)/√(U1² + U2²)
 * @source ISO 13528 (from memory)
 * @example =PROVE.ENRATIO(10.05,0.03,10,0.04) → 1
 */
export function enRatio(x1: any, U1: any, x2: any, U2: any): any {
  return normalisedError(readNumber(x1, 'x1'), readNumber(U1, 'U1'), readNumber(x2, 'x2'), readNumber(U2, 'U2'));
}
