/** What `npm run workbooks` writes: bundled to build/workbooks.mjs. The engine that computes the values is a bundle of its own. */
import { firstWorkbook } from '../../worksheets/firstWorkbook';
import type { SheetPlan } from '../../worksheets/plan';

export { engineSheets } from './engineSheets';
export { readWorkbook } from './readWorkbook';
export { writeWorkbook } from './writeWorkbook';

/** A workbook for people who open a file rather than a pane. */
export interface ReadyWorkbook {
  readonly file: string;
  readonly plans: readonly SheetPlan[];
}

/** Every workbook that comes ready. */
export function readyWorkbooks(): readonly ReadyWorkbook[] {
  return [{ file: 'first-workbook.xlsx', plans: firstWorkbook() }];
}
