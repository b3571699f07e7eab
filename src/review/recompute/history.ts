import { lineThrough, type Line } from '../independent/line';
import { coverage } from '../independent/student';
import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import { worst, type Expected } from './expected';
import { Expectations } from './expectations';

const YEAR = 365.25;
const LAST_DAY = 2_958_465;
const EXTENSION = 1.1;

/** A calibration of the history. */
interface Calibration {
  readonly day: number;
  readonly output: number;
  readonly zero: number | undefined;
  readonly uncertainty: number | undefined;
  readonly found: string | undefined;
}

/** Drift, shift and intervals of a history of calibrations, from its typed rows. */
export function historyExpected(sheet: ReviewedSheet): readonly Expected[] {
  const expect = new Expectations(sheet);
  const days = sheet.column('typed_date');
  const rows = days.flatMap((cell): Calibration[] => {
    // Date, output, zero, uncertainty, found.
    const [day, output, zero, uncertainty] = [0, 1, 2, 3].map((column) => numberIn(sheet.beside(cell, column)));
    const { value } = sheet.beside(cell, 4);
    return day === undefined || output === undefined ? [] : [{ day, output, zero, uncertainty, found: typeof value === 'string' ? value : undefined }];
  });
  const typed = [...days, ...sheet.column('typed_output')].filter((cell) => numberIn(cell) !== undefined).length;
  if (rows.length < (sheet.number('needed_rows') ?? Infinity) || typed !== 2 * rows.length) return expect.nothingYet(['interval_staircase', 'interval_reliability', 'due_staircase', 'due_reliability', 'due_earliest']);
  const line = lineThrough(rows.map(({ day }) => day), rows.map(({ output }) => output));
  const sorted = [...rows].sort((a, b) => a.day - b.day);
  if (!line || sorted.some(({ day }, i) => day === sorted[i - 1]?.day)) return expect.list;
  changes(expect, rows, sorted);
  const met = drift(expect, line, sorted);
  intervals(expect, sorted, met);
  return expect.list;
}

function changes(expect: Expectations, rows: readonly Calibration[], sorted: readonly Calibration[]): void {
  const [before, last] = sorted.slice(-2);
  const rated = expect.sheet.number('rated_output');
  // As the sheet has them: each against the row above.
  expect.result('worst_shift', { ...worst(rows.slice(1).map(({ output }, i) => output / rows[i].output - 1)), scale: 1 });
  expect.result('shift', last.output / before.output - 1).result('change', last.output / sorted[0].output - 1);
  expect.result('zero_shift', last.zero === undefined || before.zero === undefined || rated === undefined ? null : (last.zero - before.zero) / rated);
  const [u1, u2] = [last, before].map(({ uncertainty, output }) => Math.abs((uncertainty ?? 0) * output));
  expect.result('en_ratio', u1 === 0 || u2 === 0 ? null : (last.output - before.output) / Math.sqrt(u1 ** 2 + u2 ** 2));
}

type Meeting = number | 'past' | 'never' | undefined;

/** Slope, its error, and when the prediction band meets a limit. */
function drift(expect: Expectations, line: Line, sorted: readonly Calibration[]): Meeting {
  const { sheet } = expect;
  const last = sorted[sorted.length - 1];
  const perYear = line.slope * YEAR;
  const scale = Math.abs(last.output);
  expect.result('drift', perYear, { scale }).result('drift_relative', perYear / last.output);
  if (line.sd === undefined) return undefined;
  expect.result('drift_error', ((line.sd / Math.sqrt(line.spread)) * YEAR) / Math.abs(last.output));
  const t = coverage(sheet.number('probability') ?? 0.95, sorted.length - 2);
  const sd = line.sd;
  const band = (day: number) => t * sd * Math.sqrt(1 + 1 / sorted.length + (day - line.meanX) ** 2 / line.spread);
  const sides = [['upper', 1], ['lower', -1]].flatMap(([side, sign]) => {
    const limit = sheet.number(`${side}_limit`);
    if (limit === undefined) return [];
    const inside = (day: number) => (sign as number) * (line.at(day) - limit) + band(day) < 0;
    return [{ side: side as string, met: meeting(inside, last.day) }];
  });
  if (sides.length === 0) {
    expect.result('limit_date', null).result('limit_side', null);
    return undefined;
  }
  // The sheet looks at the lower limit first where both are past.
  const past = sides.filter(({ met }) => met === 'past');
  const dated = sides.flatMap(({ side, met }) => (typeof met === 'number' ? [{ side, met }] : []));
  const first = dated.length === 0 ? undefined : dated.reduce((soonest, one) => (one.met < soonest.met ? one : soonest));
  const met = past.length > 0 ? 'past' : first?.met ?? 'never';
  // A hundredth of a day is as good as the bisection of either side.
  expect.result('limit_date', met, { scale: 1e6 });
  if (past.length < 2) expect.result('limit_side', past[0]?.side ?? first?.side ?? 'none');
  return met;
}

function meeting(inside: (day: number) => boolean, from: number): number | 'past' | 'never' {
  if (!inside(from)) return 'past';
  if (inside(LAST_DAY)) return 'never';
  let [near, far] = [from, LAST_DAY];
  for (let i = 0; i < 100; i += 1) {
    const middle = (near + far) / 2;
    if (inside(middle)) near = middle;
    else far = middle;
  }
  return near;
}

/** Months until the next calibration by each method, and the day that each gives. */
function intervals(expect: Expectations, sorted: readonly Calibration[], met: Meeting): void {
  const { sheet } = expect;
  const last = sorted[sorted.length - 1];
  const [now, target] = ['interval', 'target'].map((name) => sheet.number(name));
  const [least, greatest] = [sheet.number('least_interval') ?? 0, sheet.number('greatest_interval')];
  const held = (months: number) => Math.min(Math.max(months, least), greatest ?? Infinity);
  const words = sheet.column('typed_found').map(({ value }) => value);
  const [inside, outside] = ['inside', 'outside'].map((word) => words.filter((value) => value === word).length);
  const told = last.found !== undefined && now !== undefined && target !== undefined;
  const staircase = told ? held(now * (last.found === 'outside' ? EXTENSION ** (-target / (1 - target)) : EXTENSION)) : null;
  const share = inside / (inside + outside);
  const reliability = !told ? null : outside === 0 ? greatest : inside === 0 ? least : held((now * Math.log(target)) / Math.log(share));
  const band = met === undefined ? null : met === 'past' ? least : met === 'never' ? greatest ?? 'no end' : held(((met - last.day) / YEAR) * 12);
  expect.result('interval_fixed', 12).result('interval_staircase', staircase).result('interval_reliability', reliability).result('interval_band', band, { scale: 1e4 });
  const due = [12, staircase, reliability, band].map((months, i) => (typeof months === 'number' ? (i === 0 ? aYearAfter(last.day) : last.day + Math.round((months / 12) * YEAR)) : months));
  ['fixed', 'staircase', 'reliability', 'band'].forEach((method, i) => expect.result(`due_${method}`, due[i]));
  const dates = due.filter((day) => typeof day === 'number');
  if (due.every((day) => day !== undefined)) expect.result('due_earliest', dates.length === 0 ? null : Math.min(...dates));
}

/** The same day of the next year; 29 February gives the 28th. */
function aYearAfter(day: number): number {
  const date = new Date((Math.floor(day) - 25_569) * 86_400_000);
  const [year, month, days] = [date.getUTCFullYear() + 1, date.getUTCMonth(), date.getUTCDate()];
  const length = new Date(Date.UTC(year, month + 1, 0)).getUTCDate();
  return Date.UTC(year, month, Math.min(days, length)) / 86_400_000 + 25_569;
}
