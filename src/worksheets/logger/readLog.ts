import { GrowingNumbers } from './growing';
import type { Log, LogChannel, TimeBasis } from './log';
import { LogError, quoted } from './logError';
import { fieldsOf, isNoValue, numberOf } from './logFields';
import { formOf, type LogForm, type LogLine, type LogWishes } from './logForm';
import { LogLines } from './logLines';
import { counted } from './words';
import { clockSeconds, dateSeconds, momentSeconds, pastMidnight, timeExample } from './logTime';
import { type TimeColumns, timeOf } from './timeOf';

/** Lines that the form of a log is found from. */
const SAMPLE_LINES = 300;

/**
 * Reads a log: a plain column of readings, or one or more channels beside a time in seconds, a clock, a date with a clock, or a
 * number of the sample. Fields may stand between commas, semicolons, tabs or blanks, with decimal point or comma; there may be heads,
 * units, quotes and comments.
 * @throws LogError naming the line that cannot be read
 */
export function readLog(text: string, wishes: LogWishes = {}): Log {
  const reading = new LogReading(text, wishes);
  while (!reading.advance(1_000_000));
  return reading.log();
}

/** The reading of a log in pieces, so that a page stays at hand meanwhile. */
export class LogReading {
  private readonly lines: LogLines;
  private readonly form: LogForm;
  private readonly timeColumns: TimeColumns | undefined;
  private readonly time = new GrowingNumbers();
  private readonly channels: readonly { readonly column: number; readonly values: GrowingNumbers }[];
  private readonly notes: string[] = [];
  private midnights = 0;
  private done = false;

  /** @throws LogError if the first lines show no way to read it */
  constructor(text: string, wishes: LogWishes = {}) {
    // A file that is no text holds zero bytes among its first.
    if (text.slice(0, 4000).includes('\0')) throw new LogError(1, 'bytes that are no text', 'a text file, as .csv or .txt');
    this.lines = new LogLines(text);
    this.form = formOf(firstLines(this.lines), wishes);
    this.lines.restart();
    const time = timeOf(this.form, wishes.time);
    if (typeof wishes.time === 'number' && !time) throw new LogError(this.form.firstLine, `no time in column ${wishes.time + 1}`, 'a column of times, or the choice of none');
    this.timeColumns = time;
    const ofTime = time ? [time.column, ...(time.kind === 'date and clock' ? [time.column + 1] : [])] : [];
    this.channels = this.form.columns.flatMap((kind, column) => (kind === 'number' && !ofTime.includes(column) ? [{ column, values: new GrowingNumbers() }] : []));
    if (this.channels.length === 0) throw new LogError(this.form.firstLine, 'times and no readings', 'at least one column of readings');
    this.form.columns.forEach((kind, column) => {
      if (kind === 'text') this.notes.push(`Column ${column + 1} holds words and is left out.`);
    });
  }

  /** Share of the text that is read, from 0 to 1. */
  get share(): number {
    return this.done ? 1 : this.lines.share;
  }

  /**
   * Reads up to so many lines on.
   * @returns true when all are read
   * @throws LogError
   */
  advance(lines: number): boolean {
    for (let i = 0; i < lines && !this.done; i += 1) {
      const next = this.lines.next();
      if (!next) this.done = true;
      else if (next.line >= this.form.firstLine) this.sample(next);
    }
    return this.done;
  }

  /** What was read, once all of it is. */
  log(): Log {
    if (!this.done) throw new Error('the log is not read to its end yet');
    const { form, timeColumns } = this;
    const times = this.time.numbers();
    const start = times[0] ?? 0;
    return {
      form: { delimiter: form.delimiter, decimal: form.decimal },
      columns: form.columns.map((_, i) => form.heads?.[i].name || `Column ${i + 1}`),
      timeColumn: timeColumns?.column ?? 'none',
      lines: this.lines.passed,
      headLines: form.firstLine - 1,
      basis: basisOf(timeColumns),
      time: times.map((value) => value - start),
      channels: this.channels.map(({ column, values }, i): LogChannel => {
        const head = form.heads?.[column];
        const numbers = values.numbers();
        return { name: head?.name || (this.channels.length > 1 ? `Channel ${i + 1}` : 'Readings'), ...(head?.unit ? { unit: head.unit } : {}), values: numbers, missing: numbers.reduce((sum, value) => sum + (Number.isNaN(value) ? 1 : 0), 0) };
      }),
      notes: this.notes,
    };
  }

  private sample({ text, line }: LogLine): void {
    const { form } = this;
    const fields = fieldsOf(text, form.delimiter, line);
    if (fields.length !== form.columns.length) {
      if (fields.length < form.columns.length && this.lines.endsOpen && this.lines.isLast) {
        this.notes.push(`Line ${line}, the last, is cut off and left out.`);
        return;
      }
      throw new LogError(line, `${counted(fields.length, 'field')} in ${quoted(text.trim())}`, `${form.columns.length}, as in the lines above`);
    }
    const values = this.channels.map(({ column }) => this.valueOf(fields[column], line, column));
    this.time.push(this.timeAt(fields, line));
    values.forEach((value, i) => this.channels[i].values.push(value));
  }

  private valueOf(field: string, line: number, column: number): number {
    const value = numberOf(field, this.form.decimal);
    if (value !== undefined) return value;
    if (isNoValue(field)) return Number.NaN;
    throw new LogError(line, `${quoted(field)} in column ${column + 1}`, `a number with decimal ${this.form.decimal === '.' ? 'point' : 'comma'}, or nothing`);
  }

  private timeAt(fields: readonly string[], line: number): number {
    if (!this.timeColumns) return this.time.length;
    const { column, kind, unit } = this.timeColumns;
    const read = this.written(fields, this.timeColumns);
    if (read === undefined) throw new LogError(line, `${quoted(fields[column])} in column ${column + 1}`, timeExample(kind, this.form.decimal));
    const before = this.time.last();
    if (kind === 'clock') this.midnights += pastMidnight(before, read + this.midnights);
    const now = read * unit + this.midnights;
    if (now < before) throw new LogError(line, `the time ${quoted(fields[column])}, earlier than in the line before`, `times that do not go back; if column ${column + 1} is no time, choose another one or none`);
    return now;
  }

  private written(fields: readonly string[], { column, kind }: TimeColumns): number | undefined {
    const field = fields[column];
    if (kind === 'number') return numberOf(field, this.form.decimal);
    if (kind === 'clock') return clockSeconds(field);
    if (kind === 'date') return momentSeconds(field);
    const [date, clock] = [dateSeconds(field), clockSeconds(fields[column + 1])];
    return date === undefined || clock === undefined ? undefined : date + clock;
  }
}

function firstLines(lines: LogLines): LogLine[] {
  const first: LogLine[] = [];
  for (let next = lines.next(); next && first.length < SAMPLE_LINES; next = lines.next()) first.push(next);
  return first;
}

function basisOf(time: TimeColumns | undefined): TimeBasis {
  if (!time || time.counts) return 'samples';
  if (time.kind === 'number') return 'seconds';
  return time.kind === 'clock' ? 'clock' : 'date';
}
