import type { Entry } from '../../worksheets/plan';
import type { JobFunctions, Sheets } from './jobFunctions';
import { isOver } from './stepWords';

/**
 * What the Job sheet is to hold once a Review sheet is written: its name at the step of every item that has come so far, and
 * names no review yet. Undefined if the workbook has no job.
 */
export function reviewWritten(sheet: string, sheets: Sheets, functions: JobFunctions): { readonly job: string; readonly entries: readonly Entry[] } | undefined {
  const job = functions.jobOf(sheets);
  if (!job) return undefined;
  const reviewed = job.items.filter((item) => {
    const way = functions.wayOf(job, item, sheets);
    const before = way.filter(({ step }) => step !== 'reviewed');
    return before.every(isOver) && item.way.reviewed.value === undefined;
  });
  return { job: job.sheet, entries: reviewed.map((item) => functions.stepEntry(item, 'reviewed', sheet)) };
}
