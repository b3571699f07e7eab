import type { DecimalMark, Delimiter } from './logFields';

/** What the time of a log is counted in: seconds (from a number, a clock or a date), or samples where it has no time. */
export type TimeBasis = 'seconds' | 'clock' | 'date' | 'samples';

/** One recorded quantity of a log. */
export interface LogChannel {
  /** As its head says, without the unit; "Channel 2" where the log has no heads. */
  readonly name: string;
  readonly unit?: string;
  /** One a sample; NaN where the log has no value. */
  readonly values: Float64Array;
  /** Samples without a value. */
  readonly missing: number;
}

/** A record of one or more quantities over time, as a logger wrote it. */
export interface Log {
  readonly form: { readonly delimiter: Delimiter; readonly decimal: DecimalMark };
  /** What every column is called, and the one that tells the time. */
  readonly columns: readonly string[];
  readonly timeColumn: number | 'none';
  /** Lines of the text, heads and blank ones included. */
  readonly lines: number;
  /** Lines above the first sample. */
  readonly headLines: number;
  readonly basis: TimeBasis;
  /** Seconds since the first sample, never falling; the number of the sample from 0 where the log has no time. */
  readonly time: Float64Array;
  readonly channels: readonly LogChannel[];
  /** What was left out on the way, in sentences. */
  readonly notes: readonly string[];
}
