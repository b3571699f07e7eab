import { ReviewedSheet } from '../reviewedSheet';
import { creepExpected } from './creep';
import type { Expected } from './expected';
import { historyExpected } from './history';
import { inspectionExpected } from './inspection';
import { provingExpected } from './proving';
import { runExpected } from './run';
import { summingExpected } from './summing';
import { thermalExpected } from './thermal';

/**
 * What the cells of a sheet should hold by the independent path; none for a sheet that computes nothing of ours. Cells with an
 * error are left to the check of the sheet, which says why.
 */
export function expectedValues(sheet: ReviewedSheet): readonly Expected[] {
  return valuesOf(sheet).filter(({ cell: { value } }) => typeof value !== 'object' || value === null);
}

/** The names of a sheet tell its kind. */
function valuesOf(sheet: ReviewedSheet): readonly Expected[] {
  if (sheet.has('class_wanted') && sheet.has('readings_rotated')) return provingExpected(sheet);
  if (sheet.has('times_loaded')) return creepExpected(sheet);
  if (sheet.has('planned_temperature')) return thermalExpected(sheet);
  if (sheet.has('typed_date')) return historyExpected(sheet);
  if (sheet.has('corners')) return inspectionExpected(sheet);
  if (sheet.has('output_resistances')) return summingExpected(sheet);
  return runExpected(sheet);
}
