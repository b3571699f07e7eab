/** What `npm run workbooks` writes: bundled to build/workbooks.mjs. The engine that computes the values is a bundle of its own. */
import { firstWorkbook } from '../../worksheets/firstWorkbook';
import type { SheetPlan } from '../../worksheets/plan';
import { readySheets } from '../../worksheets/readySheets';

export { engineSheets } from './engineSheets';
export { readWorkbook } from './readWorkbook';
export { writeWorkbook } from './writeWorkbook';

/** A workbook for people who open a file rather than a pane. */
export interface ReadyWorkbook {
  readonly file: string;
  readonly plans: readonly SheetPlan[];
}

/** Every workbook that comes ready: of each template one with invented readings, and an empty one. */
export function readyWorkbooks(): readonly ReadyWorkbook[] {
  return [
    { file: 'first-workbook.xlsx', plans: firstWorkbook() },
    ...readySheets().flatMap(({ id, empty, filled }) => [{ file: `${id}.xlsx`, plans: [filled] }, { file: `${id}-empty.xlsx`, plans: [empty] }]),
  ];
}
