/** A job and the sheets of its workbook as they are read back, formulas not computed. */
import { inventedJobSheet } from '../../../src/worksheets/data/inventedJob';
import type { Job, JobItem } from '../../../src/worksheets/job/job';
import { readJob } from '../../../src/worksheets/job/readJob';
import { builtInTemplates } from '../../../src/worksheets/library';
import type { Entry, SheetPlan } from '../../../src/worksheets/plan';
import type { ReadSheet } from '../../../src/worksheets/readSheet';

/** A plan with constants typed into its cells, null to empty them. */
export function typed(plan: SheetPlan, entries: readonly Entry[]): SheetPlan {
  const values = new Map(entries.map(({ at, value }) => [at, value]));
  return { ...plan, cells: plan.cells.map((cell) => (values.has(cell.at) ? { ...cell, value: values.get(cell.at) ?? undefined } : cell)) };
}

/** A plan as a host reads it back before anything is computed: formulas give nothing. */
export function asRead(plan: SheetPlan): ReadSheet {
  const cells = plan.cells
    .filter(({ value, formula }) => value !== undefined || formula !== undefined)
    .map(({ at, value, formula, format }) => ({ at, value: value ?? null, ...(formula === undefined ? {} : { formula }), ...(format === undefined ? {} : { format }) }));
  return { name: plan.name, cells, names: plan.names ?? [] };
}

/** The first cell of a name; `columns` to the right of it. */
export function cellOf(plan: SheetPlan, name: string, columns = 0): string {
  const range = plan.names?.find((entry) => entry.name === name)?.range;
  const [, letter, row] = /^([A-Z])(\d+)/.exec(range ?? '') ?? [];
  if (row === undefined) throw new Error(`${plan.name} has no name ${name}`);
  return `${String.fromCharCode(letter.charCodeAt(0) + columns)}${row}`;
}

/** The invented job with entries typed over it. */
export function job(entries: readonly Entry[] = []): Job {
  const read = readJob(asRead(typed(inventedJobSheet(), entries)));
  if (!read) throw new Error('no job was read');
  return read;
}

export function firstItem(of: Job = job()): JobItem {
  return of.items[0];
}

export function template(id: string) {
  const found = builtInTemplates().find((candidate) => candidate.id === id);
  if (!found) throw new Error(`no template ${id}`);
  return found;
}
