import { medianOf, robustDeviation, robustLine, thinned } from './robust';
import { steadySpans, type SteadyOptions } from './steady';
import { firstAt, type Trace } from './trace';

/** A steady stretch of a trace, and what it says. */
export interface Stretch {
  /** From 1, in the order of time. */
  readonly number: number;
  /** First and last moment, in the time of the log. */
  readonly from: number;
  readonly to: number;
  /** Samples that the reading is the mean of. */
  readonly n: number;
  /** Samples left out of it because they lie far from the others. */
  readonly spikes: number;
  readonly mean: number;
  /** Standard deviation of the samples about their straight line over time, so that drift is no scatter; NaN of fewer than 3. */
  readonly scatter: number;
  /** Change of that line from first to last sample. */
  readonly drift: number;
}

export interface StretchOptions extends SteadyOptions {
  /** Takes the reading from the end of each stretch, for so long; from all of it if left out. */
  readonly last?: number;
}

/** The steady stretches of a trace in the order of time. */
export function steadyStretches(trace: Trace, options: StretchOptions): Stretch[] {
  return steadySpans(trace, options).map(({ first, last }, i) => {
    const from = options.last === undefined ? first : Math.max(first, firstAt(trace.time, trace.time[last] - options.last + trace.interval / 2));
    return summary(trace, { begin: first, first: from, last }, i + 1);
  });
}

/** Each sample as a stretch of its own, for a column of readings that was noted down, not recorded. */
export function singleReadings({ time, values }: Pick<Trace, 'time' | 'values'>): Stretch[] {
  return Array.from(values, (value, i) => ({ number: i + 1, from: time[i], to: time[i], n: 1, spikes: 0, mean: value, scatter: Number.NaN, drift: 0 }));
}

/** Samples further from the line than so many standard deviations are spikes. */
const SPIKE = 6;
/** Samples that are enough to tell a scatter robustly. */
const ENOUGH = 5000;

/** Samples of a trace, by index: where the stretch begins, and the first and last that are read. */
interface Samples {
  readonly begin: number;
  readonly first: number;
  readonly last: number;
}

/** What the samples from one to another say; spikes are told by a robust line, and left out. */
export function summary({ time, values, step }: Trace, { begin, first, last }: Samples, number: number): Stretch {
  const [x, y] = [time.subarray(first, last + 1), values.subarray(first, last + 1)];
  const line = robustLine(x, y);
  const rests = y.map((value, i) => value - line.at(x[i]));
  const some = thinned(rests, ENOUGH);
  const middle = medianOf(some);
  const far = Math.max(SPIKE * robustDeviation(some), 2.5 * step);
  const kept = rests.map((rest) => (Math.abs(rest - middle) <= far ? 1 : 0));
  const n = kept.reduce((sum, one) => sum + one, 0);
  const meanOf = (of: Float64Array): number => of.reduce((sum, value, i) => sum + kept[i] * (value - of[0]), of[0] * n) / n;
  const [meanX, mean] = [meanOf(x), meanOf(y)];
  const [xx, xy] = [sum(x, (at, i) => kept[i] * (at - meanX) ** 2), sum(x, (at, i) => kept[i] * (at - meanX) * (y[i] - mean))];
  const slope = xx > 0 ? xy / xx : 0;
  const squares = sum(y, (value, i) => kept[i] * (value - mean - slope * (x[i] - meanX)) ** 2);
  return {
    number, from: time[begin], to: time[last], n, spikes: y.length - n, mean,
    scatter: n > 2 ? Math.sqrt(squares / (n - 2)) : Number.NaN,
    drift: slope * (x[x.length - 1] - x[0]),
  };
}

function sum(of: Float64Array, term: (value: number, i: number) => number): number {
  return of.reduce((total, value, i) => total + term(value, i), 0);
}
