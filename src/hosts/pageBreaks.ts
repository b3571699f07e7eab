import type { SheetPlan } from '../worksheets/plan';
import { placeOf, rangeOf } from './address';
import { isLandscape, ROW_HEIGHT, rowHeights, widthOf } from './sheetLayout';

/** A4 within its margins, in pixels of the sheet at full size: 96 to the inch. */
const PAGE = { short: 698, long: 1007, shortHigh: 650, longWide: 1026 };
/** Rows come out a little higher in print than on the screen. */
const SAFETY = 0.96;

/**
 * Rows (from 0) that a printed page begins with: a part of the sheet, which begins with its heading, goes on to the next page
 * rather than being cut, if it fits there.
 */
export function pageBreaks(plan: SheetPlan): number[] {
  if (!plan.print) return [];
  const area = rangeOf(plan.print.area);
  const room = SAFETY * roomOnPage(plan, widthOf(plan, area.startColumn, area.endColumn));
  const heights = rowHeights(plan);
  const height = (from: number, to: number): number => {
    let sum = 0;
    for (let row = from; row < to; row += 1) sum += heights.get(row) ?? ROW_HEIGHT;
    return sum;
  };
  const [firstRepeated, lastRepeated] = plan.print.repeatRows ?? [1, 0];
  const repeated = height(firstRepeated - 1, lastRepeated);
  const starts = [...new Set(plan.cells.filter(({ role }) => role === 'heading').map(({ at }) => placeOf(at).row))].sort((a, b) => a - b);
  const breaks: number[] = [];
  let used = height(area.startRow, starts[0] ?? area.endRow + 1);
  starts.forEach((start, i) => {
    const part = height(start, starts[i + 1] ?? area.endRow + 1);
    if (used + part > room && repeated + part <= room) {
      breaks.push(start);
      used = repeated;
    }
    used = (used + part) % room;
  });
  return breaks;
}

/** Height of a page in pixels of the sheet, once the sheet is made as wide as the page. */
function roomOnPage(plan: SheetPlan, width: number): number {
  const [wide, high] = isLandscape(plan) ? [PAGE.longWide, PAGE.shortHigh] : [PAGE.short, PAGE.long];
  return high * Math.max(1, width / wide);
}
