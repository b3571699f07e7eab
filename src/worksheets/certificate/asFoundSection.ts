import { NO_ADJUSTMENT } from '../job/jobTerms';
import type { Job, JobItem } from '../job/job';
import { shownFrom } from './cellReference';
import { blockTable, type BlockLine } from './blockTable';
import { type CertificateDesk, linked, paragraph, section, wideField } from './certificateDesk';
import { CertifiedRun } from './certifiedRun';
import type { ReadSheet } from '../readSheet';

/** Results of a comparison that a certificate states: before and after, and since last time. */
const BEFORE_AND_AFTER = ['worst_before', 'worst_after', 'worst_shift'];
const SINCE_LAST = ['zero_change', 'span_change', 'stability'];

/** The item as it was found, what was adjusted, and what changed since last time; gives the next free row. */
export function asFoundSection(desk: CertificateDesk, start: number, job: Job, item: JobItem, comparison: ReadSheet | undefined, run: CertifiedRun): number {
  const { adjusted } = item.way;
  let row = section(desk, start, 'As found and as left');
  row = adjusted.value === undefined
    ? paragraph(desk, row, 'text', `Nothing is recorded of an adjustment; these are the results of the sheet “${run.name}”.`)
    : wideField(desk, row, linked('Adjusted or repaired', job.sheet, adjusted.at, { words: adjusted.value }));
  if (adjusted.value?.trim().toLowerCase() === NO_ADJUSTMENT) row = paragraph(desk, row, 'note', 'The item was not adjusted: the results as found are final.');
  return comparison === undefined ? row : compared(desk, row, new CertifiedRun(comparison));
}

function compared(desk: CertificateDesk, start: number, comparison: CertifiedRun): number {
  let row = start;
  for (const [name, label] of [['outcome_before', 'As found'], ['outcome_after', 'Final']] as const) {
    const cell = comparison.cells.cell(name);
    if (cell && cell.value !== null) row = wideField(desk, row, { label, content: shownFrom(comparison.name, cell.at), called: `shown_${name}` });
  }
  const lines = [...BEFORE_AND_AFTER.flatMap((id) => lineOf(comparison, [id])), ...sinceLast(comparison)];
  return blockTable(desk, row, comparison.name, [''], lines);
}

/** Changes since last time, of one block or of each; the names of several end with that of the block. */
function sinceLast(comparison: CertifiedRun): BlockLine[] {
  return SINCE_LAST.flatMap((id) => comparison.cells.namesAfter('value_')
    .filter((name) => name === id || (name.startsWith(`${id}_`) && comparison.cells.cell(`force_${name.slice(id.length + 1)}`) !== undefined))
    .flatMap((name) => lineOf(comparison, [name], name === id ? '' : `, ${name.slice(id.length + 1).replace(/_/g, ' ')}`)));
}

function lineOf(comparison: CertifiedRun, ids: readonly string[], of = ''): BlockLine[] {
  const result = comparison.result(ids[0]);
  if (!result || result.cell.value === null) return [];
  const since = SINCE_LAST.some((id) => ids[0] === id || ids[0].startsWith(`${id}_`));
  return [{ ids, results: [result], format: result.cell.format ?? '0.000%', label: `${result.label}${since && result.label.startsWith('Change') ? ' since last time' : ''}${of}` }];
}
