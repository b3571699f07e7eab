import { address, formula } from '../planBuilder';
import type { InspectionTemplate } from '../templateSchema';
import type { Desk } from './desk';
import { highlightVerdicts } from './resultTable';

const FOUND = ['good', 'doubtful', 'faulty', 'not fitted'];

/** Columns of the table. */
const LOOK = 3;
const SEEN = 7;
const VERDICT = 8;
const REMARK = 9;

/** Where the table of looks stands. */
export interface Looks {
  readonly nextRow: number;
  readonly seen: string;
  readonly verdicts: string;
}

/** What is looked at, and what was seen. */
export function lookTable({ sheet, width }: Desk, row: number, { looks }: InspectionTemplate): Looks {
  sheet.wide(1, row, width, 'heading', 'Looked at');
  sheet.acrossTo(width, 1, row + 1, 'header', ['Part', undefined, 'Look for', undefined, undefined, undefined, 'Seen', 'Verdict', 'Remark']);
  const first = row + 2;
  looks.forEach(({ part, lookFor }, i) => {
    const at = first + i;
    const seen = address(SEEN, at);
    sheet.wide(1, at, 2, 'text', part).wide(LOOK, at, SEEN - LOOK, 'text', lookFor).put(SEEN, at, 'input').wide(REMARK, at, width - REMARK + 1, 'input');
    sheet.put(VERDICT, at, 'verdict', formula(`IF(${seen}="","",IF(${seen}="faulty","outside",IF(${seen}="doubtful","doubtful","within")))`));
  });
  const last = first + looks.length - 1;
  const seen = `${address(SEEN, first)}:${address(SEEN, last)}`;
  const verdicts = `${address(VERDICT, first)}:${address(VERDICT, last)}`;
  sheet.validate({ range: seen, rule: { kind: 'list', words: FOUND }, message: `Expected ${FOUND.join(', ')}.` });
  highlightVerdicts(sheet, verdicts);
  return { nextRow: last + 2, seen, verdicts };
}
