import { fivePointRun } from './fivePointRun';
import { loadCellStudy } from './loadCellStudy';
import type { SheetPlan } from './plan';
import { startSheet } from './startSheet';

/** The workbook that a newcomer meets. */
export function firstWorkbook(): readonly SheetPlan[] {
  return [startSheet(), loadCellStudy(), fivePointRun()];
}
