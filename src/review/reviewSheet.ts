import type { SheetPlan } from '../worksheets/plan';
import { address, type Content, fixed, PlanBuilder } from '../worksheets/planBuilder';
import type { Review, ReviewFinding } from './reviewFinding';
import { countWords, KIND_WORDS, recomputedWords, recordWords, SEVERITIES } from './reviewWords';

/** What a reviewer says. */
export interface Reviewer {
  readonly by: string;
  /** Date, as a spreadsheet counts days. */
  readonly on: number;
  /** Version of the program. */
  readonly version: string;
  /** Name of the sheet. */
  readonly name: string;
}

const WIDTHS = [12, 13, 24, 8, 48];
const LAST = WIDTHS.length;
const VALUE = 3;
const REMARK_ROWS = 3;

const DONE = 'Recomputed from the typed readings by a path of its own, without the cell functions: the results that have one. Compared: results with their plain checks, verdicts with unrounded values and limits, formulas with their like, limits with the template, the job and the record, standards with their due dates and ranges, and what is shown with what is held.';
const CAUTION = 'A review by computation cannot tell whether the readings are those of this item, nor whether the method suits it: that is the reviewer’s part.';

/** The sheet "Review": the outcome in words, who reviewed, when, with which version, what was looked at, and every finding. */
export function planReviewSheet(review: Review, { by, on, version, name }: Reviewer): SheetPlan {
  const { findings } = review;
  const plan = new PlanBuilder(name, WIDTHS);
  plan.wide(1, 1, LAST, 'title', 'Review');
  plan.wide(1, 2, LAST, 'subtitle', 'What an independent computation, and the record if there is one, say of this workbook.');
  plan.wide(1, 3, LAST, 'heading', 'Outcome');
  const head: readonly (readonly [label: string, name: string | undefined, value: Content, format?: string])[] = [
    ['Outcome', 'review_outcome', countWords(findings)], ['Number of findings', 'review_count', findings.length, '0'],
    ['Reviewed by', 'review_by', by], ['Date', 'review_on', on, 'yyyy-mm-dd'], ['Version of the program', 'review_version', version],
    ['Recomputed', undefined, recomputedWords(review)], ['Record', undefined, recordWords(review)],
    ...(review.fingerprint === undefined ? [] : [['SHA-256 in the record', undefined, review.fingerprint] as const]),
  ];
  head.forEach(([label, called, value, format], i) => {
    plan.put(1, 4 + i, 'label', label);
    // A number stands right in its cell: in a narrow one, it stands by its label.
    if (typeof value === 'number') plan.put(VALUE, 4 + i, 'reference', value, format);
    else plan.wide(VALUE, 4 + i, LAST - VALUE + 1, i === 0 ? 'verdict' : 'reference', value);
    if (called !== undefined) plan.called(called, address(VALUE, 4 + i));
  });
  const look = findings.length === 0 ? 'pass' : findings.some(({ severity }) => severity === 'wrong') ? 'fail' : 'doubt';
  plan.highlight({ range: address(VALUE, 4), formula: `=${fixed(VALUE, 4)}<>""`, look });
  let row = 4 + head.length;
  plan.put(1, row, 'label', 'Sheets').wide(VALUE, row, LAST - VALUE + 1, 'text', review.sheets.join(', '));
  plan.wide(1, row + 1, LAST, 'note', DONE).wide(1, row + 2, LAST, 'caution', CAUTION);
  row = findingsTable(plan, row + 4, findings);
  plan.wide(1, row, LAST, 'heading', 'Remarks and signature of the reviewer');
  for (let i = 0; i <= REMARK_ROWS; i += 1) {
    plan.put(1, row + 1 + i, 'label', i === 0 ? 'Remarks' : i === REMARK_ROWS ? 'Signature' : undefined).wide(VALUE, row + 1 + i, LAST - VALUE + 1, 'input');
  }
  return plan.plan(1, { locked: true, print: { area: `A1:${address(LAST, row + 1 + REMARK_ROWS)}`, landscape: false, repeatRows: [1, 1] } });
}

/** Every finding, the gravest first; gives the next free row. */
function findingsTable(plan: PlanBuilder, row: number, findings: readonly ReviewFinding[]): number {
  plan.wide(1, row, LAST, 'heading', 'Findings');
  if (findings.length === 0) {
    plan.wide(1, row + 1, LAST, 'text', 'None.');
    return row + 3;
  }
  plan.across(1, row + 1, 'header', ['Severity', 'Kind', 'Sheet', 'Cell', 'Found, and expected']);
  const ordered = SEVERITIES.flatMap(({ severity }) => findings.filter((finding) => finding.severity === severity));
  ordered.forEach(({ severity, kind, sheet, at, message }, i) => plan.across(1, row + 2 + i, 'text', [severity, KIND_WORDS[kind], sheet, at, message]));
  return row + 2 + ordered.length + 1;
}
