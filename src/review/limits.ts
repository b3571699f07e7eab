import type { Job } from '../worksheets/job/job';
import type { SheetPlan } from '../worksheets/plan';
import { address } from '../worksheets/planBuilder';
import type { ExpectedPlan } from './expectedPlan';
import { found, held } from './finding';
import { numberIn, placeOf, type ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';

/** What is said of ranges whose inputs judge results. */
const JUDGES = /^Expected a limit/;
/** Limits that the form asks for, and so are the customer's. */
const ASKED = ['limit_class_from'];
/** Classes, best first. */
const CLASSES = [['00', '0.5', '1', '2'], ['AA', 'A']];
const LET_GO = 1e-9;

/** Limits that are wider than their template has them, or than the job asks. */
export function limits(sheet: ReviewedSheet, expected: ExpectedPlan | undefined, job: Job | undefined): ReviewFinding[] {
  return [...(expected ? ofTemplate(sheet, expected) : []), ...tolerances(sheet), ...(job ? ofJob(sheet, job) : [])];
}

function ofTemplate(sheet: ReviewedSheet, { template, plan, cells }: ExpectedPlan): ReviewFinding[] {
  if (!template) return [];
  const asked = new Set(ASKED.map((name) => sheet.cells.cell(name)?.at));
  return limitCells(plan).flatMap((at): ReviewFinding[] => {
    const planned = cells.get(at);
    const usual = planned?.value;
    if (planned?.role !== 'input' || typeof usual !== 'number' || asked.has(at)) return [];
    const cell = sheet.at(at);
    if (cell.formula !== undefined) return [];
    const isLeast = isLeastAllowed(plan, at);
    const limit = numberIn(cell);
    if (isInsulation(template.kind, isLeast) || (limit !== undefined && (isLeast ? limit >= usual * (1 - LET_GO) : limit <= usual * (1 + LET_GO)))) return [];
    const wider = limit === undefined ? 'no limit' : isLeast ? 'lower' : 'wider';
    return [found(sheet, cell, 'limit', `${at} holds ${held(cell.value, planned.format)} as a limit, ${wider} than ${held(usual, planned.format)} of the template “${template.title}”; expected that or less, or a reason for it`, 'odd')];
  });
}

/** The least insulation is asked in the form. */
function isInsulation(kind: string, isLeast: boolean): boolean {
  return kind === 'inspection' && isLeast;
}

function limitCells({ validations = [] }: SheetPlan): string[] {
  return validations.filter(({ message }) => JUDGES.test(message)).flatMap(({ range }) => cellsOf(range));
}

function cellsOf(range: string): string[] {
  const [first, last = first] = range.split(':').map(placeOf);
  const list: string[] = [];
  for (let row = first.row; row <= last.row; row += 1) for (let column = first.column; column <= last.column; column += 1) list.push(address(column, row));
  return list;
}

/** Whether the verdict on it asks for as much as the limit, or more. */
function isLeastAllowed({ cells }: SheetPlan, at: string): boolean {
  return cells.some(({ role, formula }) => role === 'verdict' && formula !== undefined && formula.includes(`>=${at}*`));
}

/** Tolerances typed over those that the sheet computes, and wider. */
function tolerances(sheet: ReviewedSheet): ReviewFinding[] {
  const [ofReading, ofCapacity, capacity] = ['tolerance_reading', 'tolerance_capacity', 'capacity'].map((name) => sheet.number(name));
  if (ofReading === undefined || ofCapacity === undefined || capacity === undefined) return [];
  const full = Math.abs(capacity * (sheet.number('scale') ?? 1));
  return sheet.cells.namesAfter('tolerances_').flatMap((id) => sheet.column(`tolerances_${id}`).flatMap((cell, row): ReviewFinding[] => {
    const applied = numberIn(sheet.column(`forces_${id}`)[row]);
    const [limit, usual] = [numberIn(cell), Math.max(ofReading * Math.abs(applied ?? 0), ofCapacity * full)];
    if (cell.formula !== undefined || applied === undefined || (limit !== undefined && limit <= usual * (1 + LET_GO))) return [];
    return [found(sheet, cell, 'limit', `${cell.at} holds ${held(cell.value)} as tolerance; expected ${held(usual)} or less, as the tolerances of reading and capacity give it`, 'odd')];
  }));
}

/** Against what the customer asks: the tolerance at the greatest load, and the class. */
function ofJob(sheet: ReviewedSheet, job: Job): ReviewFinding[] {
  return [...jobTolerance(sheet, job), ...jobClass(sheet, job)];
}

function jobTolerance(sheet: ReviewedSheet, { sheet: jobSheet, fields: { tolerance } }: Job): ReviewFinding[] {
  const capacity = sheet.number('capacity');
  if (tolerance.value === undefined || capacity === undefined) return [];
  const most = tolerance.value * Math.abs(capacity * (sheet.number('scale') ?? 1));
  return sheet.cells.namesAfter('tolerances_').flatMap((id): ReviewFinding[] => {
    const wider = sheet.column(`tolerances_${id}`).filter((cell) => (numberIn(cell) ?? 0) > most * (1 + LET_GO));
    if (wider.length === 0) return [];
    const [cell] = wider;
    return [found(sheet, cell, 'limit', `${cell.at} holds a tolerance of ${held(cell.value)}${wider.length > 1 ? ` (and ${wider.length - 1} more)` : ''}; expected ${held(most)} at most, the tolerance of the job in ${jobSheet}!${tolerance.at}`)];
  });
}

function jobClass(sheet: ReviewedSheet, { sheet: jobSheet, fields }: Job): ReviewFinding[] {
  const cell = sheet.cells.cell('class_wanted');
  const asked = fields.class.value?.replace(/^class\s+/i, '').trim();
  const judged = typeof cell?.value === 'string' ? cell.value.replace(/^class\s+/i, '').trim() : undefined;
  const order = CLASSES.find((classes) => asked !== undefined && judged !== undefined && classes.includes(asked) && classes.includes(judged));
  if (!cell || !order || order.indexOf(judged as string) <= order.indexOf(asked as string)) return [];
  return [found(sheet, cell, 'limit', `${cell.at} judges by class ${judged}; expected class ${asked}, as the job asks in ${jobSheet}!${fields.class.at}`)];
}

