import { address, formula, type Formula } from '../planBuilder';
import { type Desk, RESULT } from './desk';

/** Columns of the table, besides the plain value, which stands where results stand. */
const OWN = 3;
const DIFFERENCE = 5;
const VERDICT = 6;
const WORDS = 7;
/** A long number in the narrow column of the add-in's results. */
const NARROW = '0.000E+00';

/** A result beside the same by built-in functions. */
export interface CheckLine {
  /** Ends the name of the plain value, like the name of the result. */
  readonly id: string;
  readonly label: string;
  /** Expression of the add-in's result, or its magnitude if the plain formula gives that; empty while there is none. */
  readonly own: string;
  readonly plain: Formula;
  readonly format: string;
  /** What a difference is measured against, as an expression. */
  readonly scale: string;
  /** How the plain formula works. */
  readonly words: string;
}

/** Heading of a check, with what it is for; gives the next free row. */
export function checkHeading({ sheet, width }: Desk, row: number, of = ''): number {
  sheet.wide(1, row, width, 'heading', `Check with plain formulas${of}`);
  sheet.wide(1, row + 1, width, 'note', 'The main results again from the readings by built-in functions alone, for a reviewer without the add-in. It needs every reading.');
  return row + 2;
}

/** Results beside the same by built-in functions, and their difference; gives the next free row. */
export function checkLines({ sheet, width }: Desk, row: number, lines: readonly CheckLine[]): number {
  sheet.across(1, row, 'header', ['Quantity', undefined, 'By the add-in', 'By plain formula', 'Difference', 'Verdict']);
  sheet.wide(WORDS, row, width - WORDS + 1, 'header', 'How');
  lines.forEach(({ id, label, own, plain, format, scale, words }, i) => {
    const at = row + 1 + i;
    const [shown, again, difference] = [address(OWN, at), address(RESULT.value, at), address(DIFFERENCE, at)];
    sheet.put(1, at, 'label', label).put(OWN, at, 'reference', formula(own), isLong(format) ? NARROW : format).put(RESULT.value, at, 'result', plain, format);
    sheet.put(DIFFERENCE, at, 'result', formula(`IF(OR(${shown}="",${again}=""),"",IF(AND(ISTEXT(${shown}),${shown}=${again}),0,${again}-${shown}))`), '0.0E+00');
    sheet.put(VERDICT, at, 'verdict', formula(`IF(${difference}="","",IF(ABS(${difference})<=1E-8*${scale},"agrees","differs"))`));
    sheet.acrossTo(width, WORDS, at, 'formula', [words]);
    sheet.called(`plain_${id}`, again);
  });
  const first = address(VERDICT, row + 1);
  const verdicts = `${first}:${address(VERDICT, row + lines.length)}`;
  sheet.highlight({ range: verdicts, formula: `=${first}="agrees"`, look: 'pass' });
  sheet.highlight({ range: verdicts, formula: `=${first}="differs"`, look: 'fail' });
  return row + lines.length + 2;
}

/** Whether numbers in a format need more than the narrow column; dates do not. */
function isLong(format: string): boolean {
  return format.length > NARROW.length && !format.includes('yy');
}
