import { type Stretch, summary } from './stretch';
import { firstAt, type Trace } from './trace';

/** Least number of samples that a reading at a moment is the mean of, where the log has them. */
const LEAST_SAMPLES = 5;

/**
 * Readings at moments after a start, as a creep record wants them: each the mean of the samples around its moment, spikes left out;
 * undefined where the log does not reach, or has a gap. The first moments are not read from samples before the start.
 * @param start in the time of the trace
 * @param minutes after it; undefined where the sheet does not say
 * @param secondsAMinute 60; other than that where the log counts samples
 */
export function readingsAt(trace: Trace, start: number, minutes: readonly (number | undefined)[], secondsAMinute = 60): (Stretch | undefined)[] {
  const { time, interval } = trace;
  const half = Math.max(1, LEAST_SAMPLES * interval / 2);
  return minutes.map((minute, row) => {
    if (minute === undefined) return undefined;
    const moment = start + minute * secondsAMinute;
    const first = firstAt(time, Math.max(start, moment - half) - interval * 1e-6);
    const last = firstAt(time, Math.max(moment, start) + half + interval * 1e-6) - 1;
    const reaches = first <= last && time[last] >= moment - interval && time[first] <= moment + interval;
    return reaches ? summary(trace, { begin: first, first, last }, row + 1) : undefined;
  });
}
