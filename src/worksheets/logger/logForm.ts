import { columnsOf, type FieldKind, fits, kindOf } from './lineKinds';
import { type DecimalMark, type Delimiter, fieldsOf, numberOf } from './logFields';
import { type ColumnHead, headsOf } from './logHeads';
import { LogError, quoted } from './logError';

/** What is said of a log rather than found out. */
export interface LogWishes {
  readonly delimiter?: Delimiter;
  readonly decimal?: DecimalMark;
  /** Column that tells the time, from 0. */
  readonly time?: number | 'none';
}

/** A line of the text, and its number from 1. */
export interface LogLine {
  readonly text: string;
  readonly line: number;
}

/** How the lines of a log are to be read. */
export interface LogForm {
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  readonly columns: readonly FieldKind[];
  readonly heads: readonly ColumnHead[] | undefined;
  /** Line of the first sample. */
  readonly firstLine: number;
  /** The fields of the samples that the form was found from. */
  readonly samples: readonly (readonly string[])[];
}

const DELIMITERS: readonly Delimiter[] = ['\t', ';', ',', 'blanks'];
const MARKS: readonly DecimalMark[] = ['.', ','];

/**
 * Finds out how a log is written from its first lines: the reading that most lines agree with, and that leaves the least as mere
 * text, is taken.
 * @throws LogError if no line holds a number
 */
export function formOf(lines: readonly LogLine[], wishes: LogWishes = {}): LogForm {
  const hasQuotes = lines.some(({ text }) => text.includes('"'));
  const tries = DELIMITERS.flatMap((delimiter) => MARKS.map((decimal) => ({ delimiter, decimal })))
    .filter(({ delimiter, decimal }) => (wishes.delimiter ?? delimiter) === delimiter && (wishes.decimal ?? decimal) === decimal)
    .filter(({ delimiter, decimal }) => delimiter !== ',' || decimal !== ',' || hasQuotes || wishes.delimiter !== undefined)
    .flatMap(({ delimiter, decimal }) => attempt(lines, delimiter, decimal));
  const plain = tries.filter((one) => !isSplitColumn(one) || wishes.delimiter === ',');
  const best = (plain.length > 0 ? plain : tries).reduce<Attempt | undefined>((chosen, one) => (chosen && !isBetter(one, chosen) ? chosen : one), undefined);
  if (!best) throw nothingToRead(lines);
  return best.form;
}

interface Attempt {
  readonly form: LogForm;
  /** Lines that agree with the form. */
  readonly agreeing: number;
  /** Columns of words, and numbers that no logger writes. */
  readonly doubtful: number;
}

function attempt(lines: readonly LogLine[], delimiter: Delimiter, decimal: DecimalMark): Attempt[] {
  const split = lines.map(({ text, line }) => ({ line, fields: fieldsOf(text, delimiter, line) }));
  const kinds = split.map(({ fields }) => fields.map((field) => kindOf(field, decimal)));
  const columns = columnsOf(kinds);
  const first = columns ? kinds.findIndex((one) => fits(one, columns)) : -1;
  if (!columns || first < 0) return [];
  const samples = split.filter((_, i) => fits(kinds[i], columns)).map(({ fields }) => fields);
  return [{
    form: { delimiter, decimal, columns, heads: headsOf(split.slice(0, first).map(({ fields }) => fields), columns.length), firstLine: split[first].line, samples },
    agreeing: samples.length,
    doubtful: columns.filter((kind) => kind === 'text').length + (delimiter === ',' && samples.some((fields) => fields.some((field) => /^[+-]?0\d/.test(field))) ? 1 : 0),
  }];
}

function isBetter(one: Attempt, than: Attempt): boolean {
  // What most lines do not agree with is no way to read them, however tidy the few look.
  if (Math.max(one.agreeing, than.agreeing) > 2 * Math.min(one.agreeing, than.agreeing)) return one.agreeing > than.agreeing;
  if (one.doubtful !== than.doubtful) return one.doubtful < than.doubtful;
  if (one.agreeing !== than.agreeing) return one.agreeing > than.agreeing;
  return one.form.columns.length > than.form.columns.length;
}

/** True of one column with decimal commas that looks like two: whole numbers left and right, and those at the left do not count on evenly. */
function isSplitColumn({ form: { delimiter, columns, heads, samples } }: Attempt): boolean {
  if (delimiter !== ',' || columns.length !== 2 || heads || !samples.every((fields) => fields.every((field) => /^[+-]?\d+$/.test(field)))) return false;
  const left = samples.map(([field]) => numberOf(field, '.') ?? Number.NaN);
  const step = left[1] - left[0];
  return !(step > 0 && left.every((value, i) => i === 0 || value - left[i - 1] === step));
}

function nothingToRead(lines: readonly LogLine[]): LogError {
  const [first] = lines;
  if (!first) return new LogError(1, 'nothing', 'lines with a reading each, or with a time and readings');
  const last = lines[lines.length - 1];
  return new LogError(first.line, quoted(first.text.trim()), `a line with numbers somewhere below it, but up to line ${last.line} there is none that could be read`);
}
