import { badInput, noAnswer } from './errors';
import { counted } from './wording';

/** A reading at a time. */
export interface TimedReading {
  /** Where it stands in the range, as messages name it. */
  readonly place: string;
  /** Minutes. */
  readonly time: number;
  /** Output units. */
  readonly reading: number;
}

/**
 * Creep under constant load, or creep return after it: (X(to) − X(from))/RO, fraction of rated output, signed.
 * Between readings the output is taken as linear in time.
 * @param record times rising
 * @param from, to minutes; the ends of the record if left out
 * Source: ANSI/ISA-S37.1 vocabulary.
 * @throws MetrologyError (no answer) if a time lies outside the record
 */
export function creep(record: readonly TimedReading[], ratedOutput: number, from?: number, to?: number): number {
  if (record.length < 2) throw badInput(`found ${counted(record.length, 'timed reading')}; creep needs at least 2`);
  record.forEach(({ place, time }, i) => {
    if (i > 0 && time <= record[i - 1].time) {
      throw badInput(`times ${place}: found ${time} after ${record[i - 1].time}; expected times that rise`);
    }
  });
  const start = from ?? record[0].time;
  const end = to ?? record[record.length - 1].time;
  if (end < start) throw badInput(`to: found ${end}; expected a time not before from, ${start}`);
  return (readingAt(record, end) - readingAt(record, start)) / ratedOutput;
}

function readingAt(record: readonly TimedReading[], time: number): number {
  const next = record.findIndex((point) => point.time >= time);
  if (next < 0 || time < record[0].time) {
    throw noAnswer(`no reading at ${time} min: the record runs from ${record[0].time} to ${record[record.length - 1].time} min`);
  }
  const after = record[next];
  if (after.time === time) return after.reading;
  const before = record[next - 1];
  return before.reading + ((time - before.time) / (after.time - before.time)) * (after.reading - before.reading);
}
