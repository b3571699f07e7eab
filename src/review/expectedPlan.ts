import { builtInTemplates } from '../worksheets/library';
import type { PlanCell, SheetPlan } from '../worksheets/plan';
import { planSheet } from '../worksheets/planner';
import type { Template } from '../worksheets/template';
import { answersOf } from './sheetAnswers';
import type { ReviewedSheet } from './reviewedSheet';

/** The sheet as its template makes it for what it holds. */
export interface ExpectedPlan {
  /** The template of the library that it is of; undefined for sheets that are made from others. */
  readonly template?: Template;
  readonly plan: SheetPlan;
  readonly cells: ReadonlyMap<string, PlanCell>;
}

/** The template of the library that a sheet was built from, by its title. */
export function templateOf(sheet: ReviewedSheet): Template | undefined {
  const title = sheet.at('A1').value;
  return typeof title === 'string' ? builtInTemplates().find((template) => template.title === title) : undefined;
}

/**
 * Plans the sheet again from its template and the answers that its cells give away, and takes the plan only if every name of
 * it stands where it does on the sheet: then each cell is known. Undefined for sheets of other templates, and for changed ones.
 */
export function expectedPlan(sheet: ReviewedSheet): ExpectedPlan | undefined {
  const template = templateOf(sheet);
  const answers = template && answersOf(sheet, template);
  if (!template || !answers) return undefined;
  const expected = ifItStands(sheet, planSheet(template, answers).plan);
  return expected && { ...expected, template };
}

/** A plan, if every name of it stands where it does on the sheet. */
export function ifItStands(sheet: ReviewedSheet, plan: SheetPlan | undefined): ExpectedPlan | undefined {
  if (!plan || !namesStand(sheet, plan)) return undefined;
  return { plan, cells: new Map(plan.cells.map((cell) => [cell.at, cell])) };
}

function namesStand(sheet: ReviewedSheet, { names = [] }: SheetPlan): boolean {
  const own = new Map(sheet.read.names.map(({ name, range }) => [name.toLowerCase(), range.replaceAll('$', '')]));
  return names.every(({ name, range }) => own.get(name.toLowerCase()) === range.replaceAll('$', ''));
}
