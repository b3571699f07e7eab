import { found, held } from './finding';
import type { Expected } from './recompute/expected';
import { numberIn, type ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';
import { shownNumber } from './shownNumber';
import { judgedCells, keeps } from './verdicts';

/** Values beyond their limit that look within it: by the number format of their cell, or by a rounded formula. */
export function rounding(sheet: ReviewedSheet, expected: readonly Expected[]): ReviewFinding[] {
  const independent = new Map(expected.flatMap(({ cell, value }) => (typeof value === 'number' ? [[cell.at, value] as const] : [])));
  return judgedCells(sheet).flatMap((judged): ReviewFinding[] => {
    const { value, limit, verdict } = judged;
    const [cell, most] = [numberIn(value), numberIn(limit)];
    const unrounded = independent.get(value.at) ?? cell;
    if (cell === undefined || unrounded === undefined || most === undefined || keeps(judged, unrounded, most)) return [];
    const shown = shownNumber(cell, value.format) ?? cell;
    if (!keeps(judged, shown, shownNumber(most, limit.format) ?? most)) return [];
    const says = verdict.value === 'outside' ? '' : `, and ${verdict.at} says ${held(verdict.value)}`;
    return [found(sheet, value, 'rounding', `${value.at} shows ${held(shown, value.format)}${says}; unrounded it is ${held(unrounded, value.format)}, beyond the limit ${held(most, limit.format)} in ${limit.at}; expected digits that tell it`, says === '' ? 'odd' : 'wrong')];
  });
}
