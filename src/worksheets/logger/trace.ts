import type { Log, LogChannel } from './log';

/** One channel of a log, samples without a value left out. */
export interface Trace {
  /** Seconds, or numbers of samples; never falling. */
  readonly time: Float64Array;
  readonly values: Float64Array;
}

export function traceOf({ time }: Pick<Log, 'time'>, { values, missing }: Pick<LogChannel, 'values' | 'missing'>): Trace {
  if (missing === 0) return { time, values };
  const has = (_: number, i: number): boolean => !Number.isNaN(values[i]);
  return { time: time.filter(has), values: values.filter(has) };
}

/** The usual time between samples: the median. 0 of fewer than two samples. */
export function intervalOf(time: Float64Array): number {
  if (time.length < 2) return 0;
  const steps = time.subarray(1).map((at, i) => at - time[i]).sort();
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
