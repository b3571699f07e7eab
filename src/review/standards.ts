import { dateText, serialOf } from '../worksheets/check/serialDate';
import { withUnit } from '../worksheets/shown';
import type { Job, JobStandard } from '../worksheets/job/job';
import { standardCalled } from '../worksheets/job/readJob';
import { found, held } from './finding';
import { numberIn, type ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';

const LET_GO = 1e-9;

/** What was used in a run against the job's table of standards, and the room against its limits. `today`: day that the review is made on. */
export function standards(sheet: ReviewedSheet, job: Job | undefined, today: number | undefined): ReviewFinding[] {
  return [...dateToCome(sheet, today), ...(job ? [...ofTable(sheet, job), ...room(sheet, job)] : [])];
}

function ofTable(sheet: ReviewedSheet, job: Job): ReviewFinding[] {
  const cell = sheet.cells.cell('standard');
  if (!cell || (typeof cell.value !== 'string' && typeof cell.value !== 'number') || job.standards.length === 0) return [];
  const standard = standardCalled(job, String(cell.value));
  if (!standard) return [found(sheet, cell, 'standard', `${cell.at} names the standard ${held(cell.value)}, which is not in the table of ${job.sheet}; expected one of ${job.standards.map(({ id }) => id.value).join(', ')}`)];
  return [...overdue(sheet, job, standard), ...outOfRange(sheet, job, standard), ...betterThanItIs(sheet, job, standard)];
}

function overdue(sheet: ReviewedSheet, { sheet: jobSheet }: Job, { id, due }: JobStandard): ReviewFinding[] {
  const date = sheet.cells.cell('date');
  const run = serialOf(date?.value);
  if (!date || run === undefined || due.value === undefined || run <= due.value) return [];
  return [found(sheet, date, 'standard', `The run of ${dateText(run)} (${date.at}) was made with ${id.value}, due on ${dateText(due.value)} (${jobSheet}!${due.at}); expected a standard in calibration`)];
}

/** Forces used, in the unit of the sheet, against the range that the standard is verified for. */
function outOfRange(sheet: ReviewedSheet, { sheet: jobSheet }: Job, standard: JobStandard): ReviewFinding[] {
  const used = loads(sheet);
  const [first] = used;
  const unit = unitOf(sheet);
  if (!first || unit === undefined) return [];
  const { id, verified_from: from, verified_to: to } = standard;
  if (standard.unit.value !== undefined && standard.unit.value !== unit) {
    return [found(sheet, { at: first.at }, 'standard', `${first.at} and the other loads are in ${unit}, and ${id.value} is verified in ${standard.unit.value} (${jobSheet}!${standard.unit.at}); expected one unit`)];
  }
  const outside = (isOutside: (load: number) => boolean, limit: number, at: string, side: string): ReviewFinding[] => {
    const wrong = used.filter(({ load }) => isOutside(load));
    if (wrong.length === 0) return [];
    return [found(sheet, wrong[0], 'standard', `${wrong[0].at} holds ${withUnit(wrong[0].load, unit)}${wrong.length > 1 ? ` (and ${wrong.length - 1} more)` : ''}; expected ${side} ${withUnit(limit, unit)}, for which ${id.value} is verified (${jobSheet}!${at})`)];
  };
  return [
    ...(to.value === undefined ? [] : outside((load) => load > (to.value as number) * (1 + LET_GO), to.value, to.at, 'at most')),
    ...(from.value === undefined ? [] : outside((load) => load < (from.value as number) * (1 - LET_GO), from.value, from.at, 'at least')),
  ];
}

function loads(sheet: ReviewedSheet): { readonly at: string; readonly load: number }[] {
  const cells = sheet.cells.namesAfter('forces_').flatMap((id) => sheet.column(`forces_${id}`).map((cell) => (sheet.has('scale') ? sheet.beside(cell, -1) : cell)));
  const single = sheet.cells.cell('load');
  return [...cells, ...(single ? [single] : [])].flatMap((cell) => {
    const force = numberIn(cell);
    return force === undefined || force === 0 ? [] : [{ at: cell.at, load: Math.abs(force) }];
  });
}

/** As the head of the readings says it, else the label of the capacity: "Capacity, kN". */
function unitOf(sheet: ReviewedSheet): string | undefined {
  const cell = sheet.cells.cell('capacity');
  return sheet.cells.text('unit') ?? /, (.+)$/.exec((cell && sheet.cells.labelOf(cell)) ?? '')?.[1];
}

/** Whether the due date of a sheet is that of a standard of the job; on an inspection it is that of the instruments used. */
export function namesStandard(sheet: ReviewedSheet): boolean {
  return sheet.cells.cell('standard') !== undefined;
}

/** A smaller uncertainty, or a later due date, than the table has. */
function betterThanItIs(sheet: ReviewedSheet, { sheet: jobSheet }: Job, { id, uncertainty, due }: JobStandard): ReviewFinding[] {
  const [u, until] = [sheet.cells.cell('standard_uncertainty'), namesStandard(sheet) ? sheet.cells.cell('standard_due') : undefined];
  const [stated, day] = [numberIn(u), serialOf(until?.value)];
  return [
    ...(u && stated !== undefined && uncertainty.value !== undefined && stated < uncertainty.value * (1 - LET_GO)
      ? [found(sheet, u, 'standard', `${u.at} holds an uncertainty of ${held(stated, '%')}; expected ${held(uncertainty.value, '%')}, that of ${id.value} in ${jobSheet}!${uncertainty.at}`)] : []),
    ...(until && day !== undefined && due.value !== undefined && day > due.value
      ? [found(sheet, until, 'standard', `${until.at} holds ${dateText(day)} as due date; expected ${dateText(due.value)}, that of ${id.value} in ${jobSheet}!${due.at}`)] : []),
  ];
}

/** The room during a run against the limits that the job sets. */
function room(sheet: ReviewedSheet, { sheet: jobSheet, fields: { temperature_least: least, temperature_greatest: greatest } }: Job): ReviewFinding[] {
  const cell = sheet.cells.cell('temperature');
  const value = numberIn(cell);
  if (!cell || value === undefined) return [];
  const beyond = least.value !== undefined && value < least.value ? least : greatest.value !== undefined && value > greatest.value ? greatest : undefined;
  if (!beyond) return [];
  return [found(sheet, cell, 'limit', `${cell.at} holds ${value} °C; expected ${beyond === least ? 'at least' : 'at most'} ${beyond.value} °C, as the job asks in ${jobSheet}!${beyond.at}`)];
}

function dateToCome(sheet: ReviewedSheet, today: number | undefined): ReviewFinding[] {
  const cell = sheet.cells.cell('date');
  const day = serialOf(cell?.value);
  if (!cell || day === undefined || today === undefined || day <= today) return [];
  return [found(sheet, cell, 'sheet', `${cell.at} holds ${dateText(day)}, a day to come; expected the date of the run`, 'odd')];
}
