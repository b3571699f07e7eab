import { growth, timeToLimit } from '../metrology/growth';
import { requireLimits } from '../metrology/limits';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { isBlank, named, readNumber, readPairs, readPositive, readWhole } from './readCell';
import { readTolerance } from './readLimits';
import { readShare } from './readShare';
import { headed } from './table';

/** The longest interval looked at, in longest times of the history: no one should extrapolate further. */
const REACH = 10;

/**
 * Interval after which a value, as it has moved and grown uncertain since its calibrations, may pass a limit.
 * @customfunction DRIFTINTERVAL
 * @group Stability and interval
 * @param {any[][]} times Times since the calibration before, days, months or years; one column or row.
 * @param {any[][]} changes Change of the value over each of those times.
 * @param {any} value Value at the last calibration.
 * @param {any} uncertainty Standard uncertainty of that value.
 * @param {any} [lower] Lower limit of the value.
 * @param {any} [upper] Upper limit of the value.
 * @param {any} [greatestUncertainty] Greatest standard uncertainty allowed.
 * @param {any} [probability] Probability that the limits hold, between 0 and 1; 0.95 if left out.
 * @param {any} [degree] Degree of the change over time, 1 (default) or 2; the change begins at 0.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Interval (unit of times), the limit met first ("lower", "upper" or "uncertainty"), the value and its standard uncertainty then; #N/A if none is met within ten times the longest time.
 * @formula change = b1·t + b2·t²; u = √(u0² + s²·(1 + x′(X′X)⁻¹x))
 * @formula the first t at which value + change ± t(p)·u leaves the limits, or u the greatest allowed; with one limit t(p) is one-sided
 * @source NASA-HDBK-8739.19-5, chapter 7, as passed on by a public secondary source
 * @example =PROVE.DRIFTINTERVAL({1;2;3},{0.1;0.2;0.3},10,0,,11,,,,FALSE) → {10,"upper",11,0}
 */
export function driftInterval(
  times: any[][], changes: any[][], value: any, uncertainty: any, lower?: any, upper?: any,
  greatestUncertainty?: any, probability?: any, degree?: any, headers?: any,
): any[][] {
  const start = readNumber(value, 'value');
  const limits = { value: start, ...readEnds(lower, upper, greatestUncertainty), probability: readShare(probability, 'probability', 0.95) };
  const u0 = readNumber(uncertainty, 'uncertainty');
  if (u0 < 0) throw new CellFault('#VALUE!', `uncertainty: found ${u0}; expected 0 or more`);
  const history = readHistory(times, changes);
  const power = isBlank(degree) ? 1 : readWhole(degree, 'degree', 1, 2);
  const model = growth(history.map(({ first }) => first), history.map(({ second }) => second), u0, power);
  const longest = history.reduce((most, { first }) => Math.max(most, first), 0);
  const { time, end } = timeToLimit(model, limits, REACH * longest);
  return headed(['Interval', 'Limit', 'Value', 'Uncertainty'], [[time, end, start + model.changeAt(time), model.uncertaintyAt(time)]], headers);
}

function readHistory(times: Cells, changes: Cells) {
  const pairs = readPairs(times, changes, ['times', 'changes'], 'time');
  for (const { place, first } of pairs) {
    if (first > 0) continue;
    throw new CellFault('#VALUE!', `${named('times', place)}: found ${first}; expected a time greater than 0`);
  }
  return pairs;
}

function readEnds(lower: Cell, upper: Cell, greatest: Cell) {
  const limits = readTolerance(lower, upper);
  const uncertainty = isBlank(greatest) ? undefined : readPositive(greatest, 'greatestUncertainty');
  const given = limits.lower !== undefined || limits.upper !== undefined;
  if (!given && uncertainty === undefined) {
    throw new CellFault('#VALUE!', 'lower, upper, greatestUncertainty: found none of them; expected at least one limit');
  }
  if (given) requireLimits(limits, ['lower', 'upper']);
  return { ...limits, uncertainty };
}
