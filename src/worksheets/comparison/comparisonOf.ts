import { FilledSheet } from '../filledSheet';
import type { ReadSheet } from '../readSheet';

/** The sheet that compares an item as found and as left, by the name that the job gives the item; the last one if there are several. */
export function comparisonOf(sheets: readonly ReadSheet[], itemName: string): ReadSheet | undefined {
  return sheets.findLast((sheet) => new FilledSheet(sheet).text('comparison_item')?.trim() === itemName.trim());
}
