import { dayOfLimit, drift as lineThrough, type Drift, type Side } from '../metrology/drift';
import { requireLimits } from '../metrology/limits';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { named, readPairs } from './readCell';
import { readTolerance } from './readLimits';
import { readShare } from './readShare';
import { headed } from './table';

/** The days a cell can show as a date: up to the end of the year 9999. */
const LAST_DAY = 2_958_465;

/**
 * Drift of a value over its calibrations, and the date on which it may pass a limit.
 * @customfunction DRIFT
 * @group Stability and interval
 * @param {any[][]} dates Dates of the calibrations, as the sheet counts days; one column or row.
 * @param {any[][]} values Value at each: output at capacity, zero, or another; at least 3.
 * @param {any} [lower] Lower limit of the value.
 * @param {any} [upper] Upper limit of the value.
 * @param {any} [probability] Probability of the prediction band, two-sided, between 0 and 1; 0.95 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Slope (units of the value per year of 365.25 days), its standard error, the date on which the band first meets a limit (format it as a date) and which limit; #N/A in place of the date if it never does or has already. Blank without a limit.
 * @formula band: a + b·d ± t·s·√(1 + x′(X′X)⁻¹x), t of Student with n − 2 degrees of freedom
 * @source linear regression (NIST/SEMATECH e-Handbook 4.5.1)
 * @note A slope smaller than about twice its standard error is no proof of a drift. A repair or an overload breaks the line: begin a new history.
 * @example =PROVE.DRIFT({0;365.25;730.5},{2;2.001;2.002},,2.005,,FALSE) → {0.001,0,1826.25,"upper"}
 */
export function drift(dates: any[][], values: any[][], lower?: any, upper?: any, probability?: any, headers?: any): any[][] {
  const share = readShare(probability, 'probability', 0.95);
  const limits = readSides(lower, upper);
  const days = readHistory(dates, values);
  const line = lineThrough(days.map(({ first }) => first), days.map(({ second }) => second));
  const last = days.reduce((latest, { first }) => Math.max(latest, first), 0);
  const [date, side] = firstMeeting(line, limits, last, share);
  return headed(['Slope per year', 'Standard error', 'Limit met on', 'Limit'], [[line.perYear, line.standardError, date, side]], headers);
}

function readHistory(dates: Cells, values: Cells) {
  const pairs = readPairs(dates, values, ['dates', 'values'], 'date');
  for (const { place, first } of pairs) {
    if (first >= 0 && first <= LAST_DAY) continue;
    throw new CellFault('#VALUE!', `${named('dates', place)}: found ${first}; expected a date, as the sheet counts days`);
  }
  if (pairs.length < 3) throw new CellFault('#VALUE!', `values: found ${pairs.length}; a drift with its standard error needs at least 3`);
  return pairs;
}

type SideLimits = readonly { readonly side: Side; readonly limit: number }[];

function readSides(lower: Cell, upper: Cell): SideLimits {
  const limits = readTolerance(lower, upper);
  const given = (['lower', 'upper'] as const).flatMap((side) => {
    const limit = limits[side];
    return limit === undefined ? [] : [{ side, limit }];
  });
  if (given.length > 0) requireLimits(limits, ['lower', 'upper']);
  return given;
}

/** Date and side of the limit that is met first; a fault in place of the date if one is past already, or none is ever met. */
function firstMeeting(line: Drift, limits: SideLimits, last: number, probability: number): [number | string | CellFault, string] {
  if (limits.length === 0) return ['', ''];
  const meetings = limits.map(({ side, limit }) => ({ side, limit, day: dayOfLimit(line, limit, side, last, LAST_DAY, probability) }));
  const past = meetings.find(({ day }) => day === 'past');
  if (past) return [new CellFault('#N/A', `on the last date the prediction band is past the ${past.side} limit, ${past.limit}, already`), past.side];
  const met = meetings.flatMap(({ side, day }) => (typeof day === 'number' ? [{ side, day }] : []));
  if (met.length === 0) return [new CellFault('#N/A', `the prediction band never meets ${limits.map(({ side, limit }) => `the ${side} limit, ${limit}`).join(', nor ')}`), ''];
  const first = met.reduce((soonest, one) => (one.day < soonest.day ? one : soonest));
  return [first.day, first.side];
}
