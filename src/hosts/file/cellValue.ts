import type { CellValue } from '../sheetHost';

/** The errors that a file can hold and that stand for a lack of input or an answer that does not exist, not for a broken formula. */
const ERRORS = new Set(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NULL!', '#REF!']);

/** Letter set before cached text, so that the writing library takes no text for a number, a truth value or an error. */
export const TEXT_MARK = '\uE000';

/**
 * The cached value of a formula, as the writing library reads it. Blank becomes 0, as in Excel.
 * Throws if the value shows that the formula cannot be computed, like #NAME? or #SPILL!.
 */
export function cachedText(value: CellValue, place: string): string {
  if (value === null) return '0';
  if (typeof value === 'string') return TEXT_MARK + value;
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'object') return knownError(value.error, place);
  if (!Number.isFinite(value)) throw new Error(`${place}: found ${value}; expected a number that a cell can hold`);
  return String(value);
}

/** The code of an error that may stand in a file; throws on any other. */
export function knownError(code: string, place: string): string {
  if (!ERRORS.has(code)) throw new Error(`${place}: found ${code}; expected a value, or one of ${[...ERRORS].join(' ')}`);
  return code;
}
