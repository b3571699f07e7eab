import { address } from '../planBuilder';
import { highlightVerdicts } from '../planner/resultTable';
import { shownFrom } from './cellReference';
import { type CertificateDesk, USUAL_WIDTH } from './certificateDesk';
import type { CertifiedResult } from './certifiedRun';

/** A result of up to two blocks on one line. */
export interface BlockLine {
  /** A result a block; undefined where a block has none. */
  readonly results: readonly (CertifiedResult | undefined)[];
  /** Ends the names of the cells that show it: `shown_<id>`. */
  readonly ids: readonly string[];
  readonly format: string;
  /** Format of the limit; that of the result if omitted. */
  readonly limitFormat?: string;
  /** Words for it, instead of those of its own sheet. */
  readonly label?: string;
}

/** Columns: quantity over two, unit, and for each block its result; if any is judged, the limit before, and a verdict beside each. */
const [UNIT, LIMIT] = [3, 4];

/** The first column right of the results of so many blocks without verdicts; where columns are narrow, each takes two. */
export function freeColumn({ width }: CertificateDesk, blocks: number): number {
  return LIMIT + blocks * columnsOf(width);
}

function columnsOf(width: number): number {
  return width > USUAL_WIDTH ? 2 : 1;
}

/** Results by line, blocks side by side; those that are judged first. Gives the next free row. */
export function blockTable({ sheet, width }: CertificateDesk, row: number, run: string, blocks: readonly string[], lines: readonly BlockLine[]): number {
  if (lines.length === 0) return row;
  const judged = lines.filter(({ results }) => results.some((result) => result?.verdict));
  const isJudged = judged.length > 0;
  const span = isJudged ? 1 : columnsOf(width);
  const heads = blocks.length > 1 ? blocks : ['Result'];
  sheet.acrossTo(width, 1, row, 'header', ['Quantity', undefined, 'Unit', ...(isJudged ? ['Limit', ...heads.flatMap((head) => [head, 'Verdict'])] : heads.flatMap((head) => [...Array.from({ length: span - 1 }, () => undefined), head]))]);
  [...judged, ...lines.filter((line) => !judged.includes(line))].forEach(({ results, ids, format, limitFormat = format, label }, i) => {
    const at = row + 1 + i;
    const known = results.find((result) => result !== undefined) as CertifiedResult;
    sheet.acrossTo(width, 1, at, 'field', []);
    sheet.put(1, at, 'figure', label ?? known.label).put(2, at, 'figure').put(UNIT, at, 'stated', known.unit);
    if (isJudged) sheet.put(LIMIT, at, 'figure', known.limit && shownFrom(run, known.limit.at), limitFormat);
    results.forEach((result, block) => {
      if (!result) return;
      const column = isJudged ? LIMIT + 1 + 2 * block : LIMIT + span * block;
      if (span > 1) sheet.wide(column, at, span, 'figure');
      sheet.put(column, at, 'figure', shownFrom(run, result.cell.at), format).called(`shown_${ids[block]}`, address(column, at));
      if (!result.verdict) return;
      sheet.put(column + 1, at, 'verdict', shownFrom(run, result.verdict.at));
      highlightVerdicts(sheet, address(column + 1, at));
    });
  });
  return row + 1 + lines.length;
}
