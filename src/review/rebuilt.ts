import { planCertificate } from '../worksheets/certificate/certificate';
import { planComparison } from '../worksheets/comparison/comparison';
import type { Job } from '../worksheets/job/job';
import { suggestedJob } from '../worksheets/job/jobForm';
import { planJob } from '../worksheets/job/planJob';
import { sheetCalled } from '../worksheets/job/stepSheet';
import type { ReadSheet } from '../worksheets/readSheet';
import { type ExpectedPlan, expectedPlan, ifItStands } from './expectedPlan';
import { itemOfSheet } from './jobLinks';
import { numberIn, type ReviewedSheet } from './reviewedSheet';

/** A sheet planned again: from its template, or from the sheets that it is made from. Undefined if it cannot be, or is laid out otherwise. */
export function rebuilt(sheet: ReviewedSheet, job: Job | undefined, sheets: readonly ReadSheet[]): ExpectedPlan | undefined {
  if (sheet.has('job_number')) return ifItStands(sheet, planJob({ ...suggestedJob(), number: '1', items: '1', capacity: '1' }).plan);
  if (job && sheet.has('comparison_item')) return comparison(sheet, job, sheets);
  if (job && sheet.has('certificate_number')) return certificate(sheet, job, sheets);
  return expectedPlan(sheet);
}

function comparison(sheet: ReviewedSheet, job: Job, sheets: readonly ReadSheet[]): ExpectedPlan | undefined {
  const found = sheetCalled(sheets, sheet.cells.text('comparison_found'));
  const left = sheetCalled(sheets, sheet.cells.text('comparison_left'));
  const item = found && itemOfSheet(job, found.name);
  if (!found || !item) return undefined;
  return ifItStands(sheet, planComparison({ job, item, found, ...(left && left !== found ? { left } : {}), name: sheet.name }).plan);
}

/** With the comparison of its run, or without one, as its names tell. */
function certificate(sheet: ReviewedSheet, job: Job, sheets: readonly ReadSheet[]): ExpectedPlan | undefined {
  const run = sheetCalled(sheets, sheet.cells.text('certificate_run'));
  const item = run && (itemOfSheet(job, run.name) ?? itemOfSheet(job, sheet.name));
  if (!run || !item) return undefined;
  const issued = numberIn(sheet.cells.cell('certificate_issued'));
  const number = String(sheet.cells.cell('certificate_number')?.value ?? '');
  const compared = sheets.filter(({ names, cells }) => names.some(({ name }) => name.toLowerCase() === 'comparison_item') && cells.some(({ value }) => value === run.name));
  for (const one of [...compared, undefined]) {
    const { plan } = planCertificate({ job, item, run, number, name: sheet.name, sheets, ...(one ? { comparison: one } : {}), ...(issued === undefined ? {} : { issued }) });
    const expected = ifItStands(sheet, plan);
    if (expected) return expected;
  }
  return undefined;
}
