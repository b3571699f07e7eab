import {
  bounded, EXTENSION, type FoundCounts, type IntervalBounds, reliabilityInterval, staircaseInterval,
} from '../metrology/interval';
import { intervalTest as testOf } from '../metrology/intervalTest';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { describe, isBlank, named, readList, readPositive, readWord } from './readCell';
import { readShare } from './readShare';
import { headed } from './table';

/** Part of the items that should be found inside: common practice, no source. */
const TARGET = 0.9;

/**
 * Next calibration interval by a named method.
 * @customfunction INTERVAL
 * @group Stability and interval
 * @param {any} current Interval so far: days, months or years.
 * @param {any[][]} found For "staircase" what this calibration found: "inside", "outside", or the greatest error as a part of its limit (0.5 is half the limit). For "reliability" two cells: how many calibrations found the item inside, how many outside.
 * @param {any} [target] Part of the items that should be found inside at the end of the interval, between 0 and 1; 0.9 (common practice) if left out.
 * @param {any} [method] "staircase" (default) or "reliability".
 * @param {any} [least] Least interval the customer allows, unit of current; no bound if left out.
 * @param {any} [greatest] Greatest interval the customer allows, unit of current; no bound if left out.
 * @param {any} [extension] Part by which the staircase extends; 0.1 (common practice) if left out.
 * @returns {any} Next interval, in the unit of current, not rounded.
 * @formula staircase: I·(1 + a) up to 0.8 of the limit, I up to the limit, outside it I·(1 + a)^(−R/(1 − R)), R = target
 * @formula reliability: I·ln(target)/ln(inside/(inside + outside))
 * @source ILAC-G24 / OIML D 10; steps of the staircase from NCSLI RP-1, simple response (all from memory)
 * @note Few counts say little: INTERVALTEST tells whether they contradict the target. An overloaded transducer is due at once, whatever the interval.
 * @example =PROVE.INTERVAL(12,{16,4},0.95,"reliability") → 2.75840161647
 * @example =PROVE.INTERVAL(365,"inside",,,180,390) → 390
 */
export function interval(
  current: any, found: any[][], target?: any, method?: any, least?: any, greatest?: any, extension?: any,
): any {
  const now = readPositive(current, 'current');
  const part = readShare(target, 'target', TARGET);
  const bounds = readBounds(least, greatest);
  if (readWord(method, 'method', ['staircase', 'reliability']) === 'reliability') {
    return reliabilityInterval(now, readCounts(found), part, bounds);
  }
  const step = isBlank(extension) ? EXTENSION : readPositive(extension, 'extension');
  return bounded(staircaseInterval(now, readFound(found), part, step), bounds);
}

/**
 * Whether counts of calibrations found inside and outside contradict a target reliability, and the interval that follows.
 * @customfunction INTERVALTEST
 * @group Stability and interval
 * @param {any} current Interval so far: days, months or years.
 * @param {any[][]} found Two cells: how many calibrations found the item inside its limits, how many outside.
 * @param {any} [target] Part of the items that should be found inside, between 0 and 1; 0.9 (common practice) if left out.
 * @param {any} [confidence] Confidence of the limits, and the least rejection that shortens; between 0 and 1; 0.5 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Next interval (unit of current), part found inside, confidence with which the target is rejected (blank if it is reached), lower and upper limit of the true part inside.
 * @formula Q = 1 − 2·P(X ≤ x; n, R); if Q > confidence, next = I·10^((x/n − R)·Q), not below I/2; otherwise I
 * @formula limits: Clopper–Pearson, two-sided
 * @source NCSLI RP-1, method A3, as passed on by a public secondary source
 * @note Only shortening is done: the rule for lengthening could not be verified.
 * @example =PROVE.INTERVALTEST(365,{9,1},0.9,,FALSE) → {365,0.9,"",0.752629370541,0.971641657863}
 */
export function intervalTest(current: any, found: any[][], target?: any, confidence?: any, headers?: any): any[][] {
  const { next, observed, rejection, lower, upper } = testOf(
    readPositive(current, 'current'), readCounts(found), readShare(target, 'target', TARGET), readShare(confidence, 'confidence', 0.5),
  );
  return headed(['Next interval', 'Part inside', 'Rejection', 'Lower', 'Upper'], [[next, observed, rejection, lower, upper]], headers);
}

function readBounds(least: Cell, greatest: Cell): IntervalBounds {
  const bounds = {
    least: isBlank(least) ? undefined : readPositive(least, 'least'),
    greatest: isBlank(greatest) ? undefined : readPositive(greatest, 'greatest'),
  };
  if (bounds.least !== undefined && bounds.greatest !== undefined && bounds.least > bounds.greatest) {
    throw new CellFault('#VALUE!', `greatest: found ${bounds.greatest}; expected not less than least, ${bounds.least}`);
  }
  return bounds;
}

/** Greatest error as a part of its limit; the words stand for well inside and for outside. */
function readFound(found: Cells): number {
  const [[cell]] = found;
  if (found.length !== 1 || found[0].length !== 1) {
    throw new CellFault('#VALUE!', 'found: found several cells; expected one for "staircase" (two counts are for "reliability")');
  }
  if (typeof cell === 'number' && Number.isFinite(cell)) return Math.abs(cell);
  if (typeof cell !== 'string' || cell === '') {
    throw new CellFault('#VALUE!', `found: found ${describe(cell)}; expected "inside", "outside", or the error as a part of its limit`);
  }
  return readWord(cell, 'found', ['inside', 'outside']) === 'inside' ? 0 : Infinity;
}

/** Greatest count that is taken: beyond it the binomial distribution is not computed exactly. */
const MOST_COUNTED = 1_000_000;

function readCounts(found: Cells): FoundCounts {
  const list = readList(found, 'found');
  if (list.length !== 2) {
    throw new CellFault('#VALUE!', `found: found ${list.length === 1 ? '1 cell' : `${list.length} cells`}; expected 2, the counts of calibrations inside and outside`);
  }
  const [inside, outside] = list.map(({ place, value }) => {
    if (value !== undefined && Number.isInteger(value) && value >= 0 && value <= MOST_COUNTED) return value;
    throw new CellFault('#VALUE!', `${named('found', place)}: found ${value ?? 'nothing'}; expected a whole number from 0 to ${MOST_COUNTED}`);
  });
  if (inside + outside === 0) throw new CellFault('#VALUE!', 'found: found no calibration; expected at least 1, inside or outside');
  return { inside, outside };
}
