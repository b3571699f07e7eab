import { address, formula, type Formula } from '../planBuilder';
import { type Desk, RESULT } from './desk';

/** A line of the table of results. */
export interface ResultLine {
  /** Ends the names of its cells, like "nonlinearity" or "nonlinearity_tension"; no name if nothing reads it. */
  readonly id?: string;
  readonly label: string;
  readonly value: Formula;
  readonly format: string;
  readonly unit: string;
  /** The function as a reviewer would type it. */
  readonly function: string;
  readonly judged?: {
    /** The limit as it stands at first; a formula if it is another line's; empty if none was given. */
    readonly limit?: number | Formula;
    readonly limitFormat: string;
    /** The name of the limit's cell, if it is the one to edit. */
    readonly name?: string;
    /** "magnitude": |value| ≤ limit. "greatest": value ≤ limit. "least": value ≥ limit. */
    readonly rule: 'magnitude' | 'greatest' | 'least';
    /** True if the limit's formula may give words why there is none; then there is no result. */
    readonly limitInWords?: boolean;
  };
}

/** Where a table of results stands. */
export interface ResultTable {
  readonly nextRow: number;
  /** Address of a line's value, by its id. */
  readonly values: ReadonlyMap<string, string>;
  readonly limits: ReadonlyMap<string, string>;
  /** Range of the verdicts. */
  readonly verdicts: string;
}

/** Writes a heading and a table of results from a row on. Formulas that need the addresses of other lines take them from `rowOf`. */
export function resultTable({ sheet, width }: Desk, row: number, title: string, lines: readonly ResultLine[]): ResultTable {
  sheet.wide(1, row, width, 'heading', title);
  sheet.across(1, row + 1, 'header', ['Quantity', undefined, undefined, 'Result', 'Unit', 'Limit', 'Verdict']);
  sheet.wide(RESULT.function, row + 1, width - RESULT.function + 1, 'header', 'Function (F forces, X readings, N net)');
  const first = row + 2;
  const values = new Map<string, string>();
  const limits = new Map<string, string>();
  lines.forEach((line, i) => {
    const at = first + i;
    sheet.put(RESULT.label, at, 'label', line.label).put(RESULT.value, at, 'result', line.value, line.format).put(RESULT.unit, at, 'aside', line.unit);
    sheet.acrossTo(width, RESULT.function, at, 'formula', [line.function]);
    if (line.id !== undefined) {
      values.set(line.id, address(RESULT.value, at));
      sheet.called(`value_${line.id}`, address(RESULT.value, at));
    }
    if (line.judged) {
      judge(sheet, at, line.judged);
      if (line.judged.name !== undefined) sheet.called(`limit_${line.judged.name}`, address(RESULT.limit, at));
      if (line.id !== undefined) {
        limits.set(line.id, address(RESULT.limit, at));
        sheet.called(`verdict_${line.id}`, address(RESULT.verdict, at));
      }
    }
  });
  const verdicts = `${address(RESULT.verdict, first)}:${address(RESULT.verdict, first + lines.length - 1)}`;
  highlightVerdicts(sheet, verdicts);
  return { nextRow: first + lines.length, values, limits, verdicts };
}

/** Row of the nth line of a table that starts at a row. */
export function lineRow(tableRow: number, index: number): number {
  return tableRow + 2 + index;
}

function judge(sheet: Desk['sheet'], row: number, { limit, limitFormat, rule, limitInWords }: NonNullable<ResultLine['judged']>): void {
  const isInput = limit === undefined || typeof limit === 'number';
  sheet.put(RESULT.limit, row, isInput ? 'input' : 'reference', limit, limitFormat);
  if (isInput) sheet.validate({ range: address(RESULT.limit, row), rule: { kind: 'number', least: 0 }, message: 'Expected a limit of 0 or more, or nothing if the result is not judged.' });
  const [value, limitAt] = [address(RESULT.value, row), address(RESULT.limit, row)];
  const verdict = verdictText(value, limitAt, rule);
  sheet.put(RESULT.verdict, row, 'verdict', formula(limitInWords ? `IF(AND(${value}<>"",ISTEXT(${limitAt}),${limitAt}<>""),"no result",${verdict})` : verdict));
}

/** The verdict on a value. A billionth of the limit is let go, so that binary fractions decide nothing. */
export function verdictText(value: string, limit: string, rule: NonNullable<ResultLine['judged']>['rule']): string {
  const holds = {
    magnitude: `ABS(${value})<=${limit}*(1+1E-9)`,
    greatest: `${value}<=${limit}*(1+1E-9)`,
    least: `${value}>=${limit}*(1-1E-9)`,
  }[rule];
  return `IF(ISERROR(${value}),"no result",IF(${value}="","",IF(${limit}="","no limit",IF(ISNUMBER(${value}),IF(${holds},"within","outside"),"outside"))))`;
}

/** The verdict on an error against its tolerance. A millionth of a step is let go, so that binary fractions decide nothing. */
export function toleranceVerdict(error: string, tolerance: string, resolution: string): string {
  return `IF(${error}="","",IF(${tolerance}="","no limit",IF(ABS(${error})-${tolerance}<=1E-6*${resolution},"within","outside")))`;
}

/** Looks of verdicts: within, outside, and what cannot be judged. */
export function highlightVerdicts(sheet: Desk['sheet'], range: string): void {
  const first = range.split(':')[0];
  sheet.highlight({ range, formula: `=${first}="within"`, look: 'pass' });
  sheet.highlight({ range, formula: `=${first}="outside"`, look: 'fail' });
  sheet.highlight({ range, formula: `=OR(${first}="no result",${first}="doubtful")`, look: 'doubt' });
}

/** What the outcome is told from. */
export interface Outcome {
  /** "Outcome", and of what. */
  readonly label: string;
  /** Name of its cell. */
  readonly name: string;
  readonly verdicts: readonly string[];
  /** Conditions, one of which is true while something is missing. */
  readonly waiting: readonly string[];
  /** A condition under which nothing is to be told, and the words then. */
  readonly unless?: { readonly condition: string; readonly words: string };
}

/** The line that sums all verdicts up, for the customer; gives the next free row. */
export function outcomeLine({ sheet, width }: Desk, row: number, { label, name, verdicts, waiting, unless }: Outcome): number {
  const count = (word: string) => verdicts.map((range) => `COUNTIF(${range},"${word}")`).join('+');
  const bad = ['outside', 'doubtful', 'no result'].map(count).join('+');
  const judged = `IF(${bad}>0,"outside in "&(${bad})&" of "&(${count('within')}+${bad})&" judged",IF(${count('within')}=0,"nothing was judged: no limits","within specification in all "&(${count('within')})&" judged"))`;
  const told = `IF(OR(${waiting.join(',')}),"open: readings are missing",${judged})`;
  const cell = address(RESULT.value, row);
  sheet.put(RESULT.label, row, 'label', label);
  sheet.wide(RESULT.value, row, width - RESULT.value + 1, 'result', formula(unless ? `IF(${unless.condition},"${unless.words}",${told})` : told));
  sheet.called(name, cell);
  sheet.highlight({ range: cell, formula: `=LEFT(${cell},6)="within"`, look: 'pass' });
  sheet.highlight({ range: cell, formula: `=LEFT(${cell},7)="outside"`, look: 'fail' });
  return row + 1;
}
