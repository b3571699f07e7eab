import { columnNumber, address, fixed } from '../planBuilder';
import type { PlanCell, SheetPlan } from '../plan';
import type { Job, JobCell, JobItem, JobStandard } from './job';
import { standardCalled, standardOf } from './readJob';

/**
 * The plan with the conditions that the job knows as references to its sheet, like `=IF('Job'!$C$9="","",'Job'!$C$9)`, so that
 * they are said once; the lock of the sheet then holds them. What was answered otherwise for this sheet than the job says, and a
 * number in another unit, stays as it is typed. The standard is referred to by its own row, so that a sheet keeps the standard
 * it was run with if the item is given another one later.
 */
export function linkedToJob(plan: SheetPlan, job: Job, item: JobItem): SheetPlan {
  const cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
  const linked = new Set<string>();
  const standard = standardOfPlan(plan, cells, job, item);
  for (const { name, range } of plan.names ?? []) {
    const cell = cells.get(range);
    const known = cell && cell.role === 'input' && sourceOf(cells, job, item, standard, name, cell);
    if (!known) continue;
    cells.set(range, { at: range, role: 'reference', formula: reference(job.sheet, known), ...(cell.format === undefined ? {} : { format: cell.format }) });
    linked.add(range);
  }
  const validations = plan.validations?.filter(({ range }) => !linked.has(range));
  return { ...plan, cells: [...cells.values()], ...(validations ? { validations } : {}) };
}

/** The formula that shows a cell of the job, and nothing where it is empty. */
export function reference(sheet: string, { at }: JobCell): string {
  const [, letters, row] = /^([A-Z]+)(\d+)$/.exec(at) as RegExpExecArray;
  const cell = `'${sheet.replaceAll("'", "''")}'!${fixed(columnNumber(letters), Number(row))}`;
  return `=IF(${cell}="","",${cell})`;
}

/** The cell of the job that holds the same as a condition; undefined if none does. */
function sourceOf(cells: ReadonlyMap<string, PlanCell>, { fields }: Job, item: JobItem, standard: JobStandard | undefined, name: string, cell: PlanCell): JobCell | undefined {
  switch (name) {
    case 'customer': return fields.customer;
    case 'place': return fields.place;
    case 'item': return item.name;
    case 'identification': return item.identification;
    case 'condition': return item.condition;
    case 'capacity': return same(cells, cell, item.capacity, item.unit);
    case 'resolution': return same(cells, cell, item.resolution, item.output_unit);
    case 'rated_output': return same(cells, cell, item.rated_output, item.output_unit);
    case 'standard': return standard?.id;
    case 'standard_capacity': return standard && same(cells, cell, standard.verified_to, standard.unit);
    case 'standard_uncertainty': return standard && same(cells, cell, standard.uncertainty);
    case 'standard_due': return standard && same(cells, cell, standard.due);
    case 'tolerance_capacity': return same(cells, cell, fields.tolerance);
    case 'least_interval': return same(cells, cell, fields.least_interval);
    case 'greatest_interval': return same(cells, cell, fields.greatest_interval);
    default: return /^decision_rule(_|$)/.test(name) && fields.decision_rule.value !== undefined ? fields.decision_rule : undefined;
  }
}

/** The standard that a sheet is planned with: the one answered, else the item's; undefined on a sheet that names none. */
function standardOfPlan({ names = [] }: SheetPlan, cells: ReadonlyMap<string, PlanCell>, job: Job, item: JobItem): JobStandard | undefined {
  const at = names.find(({ name }) => name === 'standard')?.range;
  if (at === undefined) return undefined;
  const value = cells.get(at)?.value;
  return typeof value === 'string' && value.trim() !== '' ? standardCalled(job, value) : standardOf(job, item);
}

/**
 * The job's cell, if what the plan holds is the same, or nothing where the job's cell can be filled later. The unit that a
 * condition is labelled with must be the job's: "Capacity, kN".
 */
function same(cells: ReadonlyMap<string, PlanCell>, cell: PlanCell, known: JobCell<number>, unit?: JobCell<string>): JobCell | undefined {
  if (unit !== undefined && labelledUnit(cells, cell) !== unit.value) return undefined;
  if (cell.formula !== undefined) return undefined;
  return cell.value === undefined || cell.value === known.value ? known : undefined;
}

/** What follows the comma in the label left of a condition. */
function labelledUnit(cells: ReadonlyMap<string, PlanCell>, { at }: PlanCell): string | undefined {
  const [, letters, row] = /^([A-Z]+)(\d+)$/.exec(at) as RegExpExecArray;
  for (let column = columnNumber(letters) - 1; column > 0; column -= 1) {
    const label = cells.get(address(column, Number(row)))?.value;
    if (typeof label === 'string') return /, (.+)$/.exec(label)?.[1];
  }
  return undefined;
}
