import type { SheetPlan } from '../../worksheets/plan';
import { checkNames } from '../planNames';
import { SheetTaken } from '../sheetHost';
import { buildSheet } from './buildSheet';
import { type CellBlock, cellBlock } from './cellBlock';
import { isCellEdit } from './errorWords';
import { type Before, rollBack, sameName } from './rollBack';
import type { RunExcel } from './selection';
import { sheetWords } from './sheetWords';

/**
 * Writes a plan as a sheet, last in the workbook: one sync to look at what is there, one to write. The sheet is built under
 * another name, and the old one goes last, so that whatever fails can be taken back.
 * @throws SheetTaken; else an error with words for the user, after the workbook is as it was.
 */
export async function writeSheet(run: RunExcel, plan: SheetPlan, replace: boolean): Promise<void> {
  checkNames([plan]);
  const block = cellBlock(plan);
  const found: { before?: Before } = {};
  let taken: string | undefined;
  try {
    taken = await run({}, async (context) => {
      const { holds, ...before } = await lookAt(context, plan.name);
      if (holds && !replace) return before.old?.name;
      found.before = before;
      queueWriting(context, plan, block, before);
      await context.sync();
      return undefined;
    });
  } catch (error) {
    // Excel refuses a batch as a whole while a cell is open, so there is nothing to take back.
    if (found.before && !isCellEdit(error)) await afterFailure(run, found.before, plan.name, error);
    else throw new Error(sheetWords(error, plan.name), { cause: error });
  }
  if (taken !== undefined) throw new SheetTaken(taken);
}

async function lookAt(context: Excel.RequestContext, name: string): Promise<Before & { readonly holds: boolean }> {
  const sheets = context.workbook.worksheets;
  sheets.load('items/id,items/name');
  const active = sheets.getActiveWorksheet();
  active.load('id');
  const old = sheets.getItemOrNullObject(name);
  old.load('id,name');
  const used = old.getUsedRangeOrNullObject(true);
  used.load('address');
  await context.sync();
  const names = sheets.items.map((sheet) => sheet.name);
  return {
    ids: new Set(sheets.items.map(({ id }) => id)),
    active: active.id,
    ...(!old.isNullObject && { old: { id: old.id, name: old.name } }),
    building: freeName('Sheet being built', [...names, name]),
    aside: freeName('Sheet being replaced', [...names, name]),
    holds: !old.isNullObject && !used.isNullObject,
  };
}

function queueWriting(context: Excel.RequestContext, plan: SheetPlan, block: CellBlock, { old, building, aside }: Before): void {
  const { application, worksheets } = context.workbook;
  application.suspendApiCalculationUntilNextSync();
  application.suspendScreenUpdatingUntilNextSync();
  const sheet = worksheets.add(building);
  buildSheet(sheet, plan, block);
  const former = old && worksheets.getItem(old.id);
  if (former) former.name = aside;
  sheet.name = plan.name;
  sheet.activate();
  sheet.calculate(false);
  former?.delete();
}

async function afterFailure(run: RunExcel, before: Before, name: string, error: unknown): Promise<void> {
  const words = sheetWords(error, name);
  let state: 'undone' | 'complete';
  try {
    state = await rollBack(run, before, name);
  } catch (second) {
    const old = before.old ? ` and give “${before.aside}” its name “${before.old.name}” back` : '';
    throw new Error(`${words} Excel then refused to clear up as well: delete “${before.building}” if it is there${old}.`, { cause: second });
  }
  if (state === 'undone') throw new Error(words, { cause: error });
}

function freeName(wanted: string, taken: readonly string[]): string {
  let name = wanted;
  for (let i = 2; taken.some((other) => sameName(other, name)); i += 1) name = `${wanted} ${i}`;
  return name;
}
