import type { Log, LogChannel } from './log';
import { medianFiltered, thinned } from './robust';

/** One channel of a log, samples without a value left out, and what is asked of it again and again. */
export interface Trace {
  /** Seconds, or numbers of samples; never falling. */
  readonly time: Float64Array;
  readonly values: Float64Array;
  /** Running medians of five values. */
  readonly filtered: Float64Array;
  /** The usual time between samples. */
  readonly interval: number;
  /** The least difference between neighbours that is none. */
  readonly step: number;
}

export function traceOf({ time }: Pick<Log, 'time'>, { values, missing }: Pick<LogChannel, 'values' | 'missing'>): Trace {
  if (missing === 0) return traceFrom(time, values);
  const has = (_: number, i: number): boolean => !Number.isNaN(values[i]);
  return traceFrom(time.filter(has), values.filter(has));
}

/** A trace of moments that never fall and as many values, none of them NaN. */
export function traceFrom(time: Float64Array, values: Float64Array): Trace {
  return { time, values, filtered: medianFiltered(values), interval: intervalOf(time), step: leastStep(values) };
}

/** The resolution, of a trace with little noise. 0 of a constant. */
function leastStep(values: Float64Array): number {
  let least = Infinity;
  for (let i = 1; i < values.length; i += 1) {
    const step = Math.abs(values[i] - values[i - 1]);
    if (step > Math.abs(values[i]) * 1e-12 && step < least) least = step;
  }
  return Number.isFinite(least) ? least : 0;
}

/** Steps that are enough to tell the usual one. */
const MOST_STEPS = 10_000;

/** The usual time between samples: the median. 0 of fewer than two samples. */
export function intervalOf(time: Float64Array): number {
  if (time.length < 2) return 0;
  const steps = thinned(time.subarray(1).map((at, i) => at - time[i]), MOST_STEPS).sort();
  return steps[Math.floor(steps.length / 2)];
}

/** First index whose time is not before a moment. */
export function firstAt(time: Float64Array, moment: number): number {
  let [from, to] = [0, time.length];
  while (from < to) {
    const middle = (from + to) >>> 1;
    if (time[middle] < moment) from = middle + 1;
    else to = middle;
  }
  return from;
}
