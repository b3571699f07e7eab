import type { Worksheet } from 'wasm-xlsxwriter';
import type { SheetPlan } from '../../worksheets/plan';
import { rangeOf } from '../address';
import { acceptedFoot } from '../excelLimits';
import { isLandscape } from '../sheetLayout';

const A4 = 9;

/** How a sheet prints: on A4, one page wide, with what its plan says, or its name, and the page below. Throws if the foot is too long for Excel. */
export function setUpPages(sheet: Worksheet, plan: SheetPlan): void {
  sheet.setPaperSize(A4);
  sheet.setPrintFitToPages(1, 0);
  sheet.setMargins(0.5, 0.5, 0.6, 0.6, 0.3, 0.3);
  const { left, right } = acceptedFoot(plan.name, plan.print?.foot);
  sheet.setFooter(`&L${left}&R${right}`);
  if (isLandscape(plan)) sheet.setLandscape();
  if (!plan.print) return;
  const { startRow, startColumn, endRow, endColumn } = rangeOf(plan.print.area);
  sheet.setPrintArea(startRow, startColumn, endRow, endColumn);
  const [first, last] = plan.print.repeatRows ?? [];
  if (first !== undefined && last !== undefined) sheet.setRepeatRows(first - 1, last - 1);
}
