import { serialOf } from '../check/serialDate';
import { type FilledCell, FilledSheet } from '../filledSheet';
import type { ReadSheet } from '../readSheet';
import type { Job, JobCell, JobFields, JobItem, JobStandard } from './job';
import { CUSTOMER_LINES, ITEM_LINES, type JobLine, REMARKS_LINE, REQUIREMENT_LINES, STANDARD_LINES, WAY_LINES } from './jobLines';

/** Where a name of the sheet is gone: its first cell, so that a message still leads to the sheet. */
const NOWHERE = 'A1';

/**
 * The job that a sheet holds; undefined if the sheet has no cell named `job_number`. Cells that are empty or hold something of
 * another kind have no value. Numbers where words are expected, like an order's, are taken as words; a date may also stand as
 * text in the form 2026-11-25.
 */
export function readJob(read: ReadSheet): Job | undefined {
  const sheet = new FilledSheet(read);
  if (!sheet.cell('job_number')) return undefined;
  return { sheet: read.name, fields: fields(sheet), items: items(sheet), standards: standards(sheet) };
}

/** The job of a workbook: that of the first sheet which holds one. */
export function jobOf(sheets: readonly ReadSheet[]): Job | undefined {
  for (const sheet of sheets) {
    const job = readJob(sheet);
    if (job) return job;
  }
  return undefined;
}

/** The standard of the job that an item names; undefined if it names none, or one that is not in the table. */
export function standardOf(job: Job, item: JobItem): JobStandard | undefined {
  return item.standard.value === undefined ? undefined : standardCalled(job, item.standard.value);
}

/** The standard of the job with an id, whatever the case of its letters. */
export function standardCalled(job: Job, id: string): JobStandard | undefined {
  const wanted = id.trim().toLowerCase();
  return job.standards.find((standard) => standard.id.value?.toLowerCase() === wanted);
}

function fields(sheet: FilledSheet): JobFields {
  const lines = [...CUSTOMER_LINES, ...REQUIREMENT_LINES, REMARKS_LINE];
  const cells = Object.fromEntries(lines.map((line) => [line.field, held(sheet.cell(`job_${line.field}`), line)])) as unknown as JobFields;
  return { ...cells, class: asClass(cells.class) };
}

/** A class that a program took for a number: 0 was typed as 00. */
function asClass(cell: JobCell<string>): JobCell<string> {
  return cell.value === '0' ? { ...cell, value: '00' } : cell;
}

function items(sheet: FilledSheet): JobItem[] {
  const names = sheet.rows('item_name')?.[0] ?? [];
  return names.map((_, index): JobItem => {
    const inColumn = (name: string) => sheet.rows(name)?.[0]?.[index];
    const own = Object.fromEntries(ITEM_LINES.map((line) => [line.field, held(inColumn(`item_${line.field}`), line)])) as unknown as Omit<JobItem, 'index' | 'way'>;
    const way = Object.fromEntries(WAY_LINES.map(({ step }) => [step, held(inColumn(`way_${step}`), { kind: 'words' })])) as unknown as JobItem['way'];
    return { index, ...own, way };
  }).filter(({ name }) => name.value !== undefined);
}

function standards(sheet: FilledSheet): JobStandard[] {
  const ids = sheet.columns('standards_id')?.[0] ?? [];
  return ids.map((_, i) => Object.fromEntries(
    STANDARD_LINES.map((line) => [line.field, held(sheet.columns(`standards_${line.field}`)?.[0]?.[i], line)]),
  ) as unknown as JobStandard).filter(({ id }) => id.value !== undefined);
}

function held(cell: FilledCell | undefined, { kind }: Pick<JobLine<string>, 'kind'>): JobCell {
  return { at: cell?.at ?? NOWHERE, value: cell && valueOf(cell, kind) };
}

function valueOf({ value }: FilledCell, kind: JobLine<string>['kind']): string | number | undefined {
  if (kind === 'date') return serialOf(value);
  if (kind === 'number') return typeof value === 'number' ? value : undefined;
  if (typeof value === 'number') return String(value);
  return typeof value === 'string' ? value.trim() : undefined;
}
