import type { Job, JobCell, JobItem } from '../worksheets/job/job';
import { reference } from '../worksheets/job/linkedToJob';
import { sameFormula } from '../worksheets/record/sameContent';
import { found, held } from './finding';
import type { ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';
import { namesStandard } from './standards';

/** The item that a sheet belongs to: the one whose way names it. */
export function itemOfSheet(job: Job, name: string): JobItem | undefined {
  return job.items.find(({ way }) => Object.values(way).some(({ value }) => value?.trim().toLowerCase() === name.toLowerCase()));
}

/** Conditions of a sheet of the job that should be read from it: another number typed in, or a reference to somewhere else. */
export function jobLinks(sheet: ReviewedSheet, job: Job, item: JobItem): ReviewFinding[] {
  return Object.entries(sourcesOf(job, item)).flatMap(([name, cells]): ReviewFinding[] => {
    const cell = sheet.cells.cell(name);
    if (name === 'standard_due' && !namesStandard(sheet)) return [];
    const sources = cells.filter((source) => source.value !== undefined);
    if (!cell || sources.length === 0) return [];
    const where = `${job.sheet}!${sources[0].at}`;
    if (cell.formula !== undefined) {
      if (cells.some((source) => sameFormula(reference(job.sheet, source), cell.formula as string))) return [];
      return isOwn(name) ? [] : [found(sheet, cell, 'overwritten', `${cell.at} holds the formula ${cell.formula}; expected a reference to ${where}`)];
    }
    if (cell.value === null || sources.some(({ value }) => value === cell.value)) return [];
    return [found(sheet, cell, 'overwritten', `${cell.at} holds ${held(cell.value, cell.format)}, and the job says ${held(sources[0].value ?? null, cell.format)} in ${where}; expected a reference to it`, 'odd')];
  });
}

/** Conditions that a sheet may compute by itself. */
function isOwn(name: string): boolean {
  return name.startsWith('tolerance');
}

/** Which cells of the job a condition is read from: of a standard, those of any. */
function sourcesOf({ fields, standards }: Job, item: JobItem): Readonly<Record<string, readonly JobCell[]>> {
  return {
    customer: [fields.customer], place: [fields.place], item: [item.name], identification: [item.identification],
    capacity: [item.capacity], rated_output: [item.rated_output],
    standard: standards.map(({ id }) => id), standard_uncertainty: standards.map(({ uncertainty }) => uncertainty), standard_due: standards.map(({ due }) => due),
  };
}
