import type { Review } from '../../src/review/reviewFinding';
import { planReviewSheet } from '../../src/review/reviewSheet';

const REVIEWER = { by: 'B. Second (invented)', on: 46_351, version: '1.0.0', name: 'Review' };
const GOOD: Review = { findings: [], recomputed: 40, agreeing: 40, sheets: ['Job', 'As found'], record: 'as signed', fingerprint: 'ab12' };
const BAD: Review = {
  ...GOOD, agreeing: 39, record: 'differs',
  findings: [
    { severity: 'odd', kind: 'standard', sheet: 'Job', at: 'C30', message: 'the standard was due on 2026-01-01; the run is of 2026-11-25' },
    { severity: 'wrong', kind: 'plain check', sheet: 'As found', at: 'D40', message: '=1+1 is no number; expected 2' },
  ],
};

function valueOf(review: Review, name: string) {
  const plan = planReviewSheet(review, REVIEWER);
  return plan.cells.find(({ at }) => at === plan.names?.find((one) => one.name === name)?.range)?.value;
}

test('the sheet states outcome, number of findings, reviewer, date and version under their names', () => {
  expect(['review_outcome', 'review_count', 'review_by', 'review_on', 'review_version'].map((name) => valueOf(GOOD, name))).toEqual(['Nothing found', 0, REVIEWER.by, REVIEWER.on, REVIEWER.version]);
  expect([valueOf(BAD, 'review_outcome'), valueOf(BAD, 'review_count')]).toEqual(['2 findings: 1 wrong, 1 odd', 2]);
});

test('every finding has a row, the gravest first, and what it says stays text', () => {
  const { cells } = planReviewSheet(BAD, REVIEWER);
  const head = cells.findIndex(({ value }) => value === 'Severity');
  expect(cells.slice(head + 5, head + 15).map(({ value }) => value)).toEqual([
    'wrong', 'Plain check', 'As found', 'D40', '=1+1 is no number; expected 2', 'odd', 'Standard', 'Job', 'C30', BAD.findings[0].message,
  ]);
  expect(cells.every(({ formula }) => formula === undefined)).toBe(true);
});

test('a good workbook is shown as passed, one with something wrong as failed', () => {
  expect(planReviewSheet(GOOD, REVIEWER).highlights).toEqual([expect.objectContaining({ look: 'pass' })]);
  expect(planReviewSheet(BAD, REVIEWER).highlights).toEqual([expect.objectContaining({ look: 'fail' })]);
  expect(planReviewSheet({ ...BAD, findings: BAD.findings.slice(0, 1) }, REVIEWER).highlights).toEqual([expect.objectContaining({ look: 'doubt' })]);
});

test('the sheet is locked but for remarks and signature, and prints upright', () => {
  const plan = planReviewSheet(GOOD, REVIEWER);
  expect(plan).toMatchObject({ locked: true, print: { landscape: false } });
  expect(plan.cells.filter(({ role }) => role === 'input')).toHaveLength(4);
});
