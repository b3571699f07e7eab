import { allOnes, type FieldType, isNotStated, NOT_STATED } from './fieldType';

const BITS = 16;
const DAY = 86_400_000;
/** Spreadsheet serial number of 1970-01-01 where days count from 1900. */
const SERIAL_OF_1970 = 25_569;
/** Code 0 of the standard. */
const FIRST = Date.UTC(1998, 0, 1) / DAY;
const LAST_CODE = allOnes(BITS) - 1;

/**
 * Days since 1998-01-01 (DATE). A date is a spreadsheet serial number of the 1900 system, or text such as 2026-11-25; it
 * is given back as that text. All ones mean that no date is stated (from memory). Source: IEEE 1451.4.
 */
export const calendarDate: FieldType = {
  bits: BITS,
  expected: `a date from ${textOf(0)} to ${textOf(LAST_CODE)} (a whole date number, or text like 2026-11-25), or "${NOT_STATED}"`,
  encode(value) {
    if (isNotStated(value)) return LAST_CODE + 1;
    const code = (typeof value === 'number' ? value - SERIAL_OF_1970 : dayOf(value)) - FIRST;
    return Number.isInteger(code) && code >= 0 && code <= LAST_CODE ? code : undefined;
  },
  decode: (code) => (code === LAST_CODE + 1 ? NOT_STATED : textOf(code)),
};

function textOf(code: number): string {
  return new Date((FIRST + code) * DAY).toISOString().slice(0, 10);
}

/** Days since 1970 of text like 2026-11-25; NaN if it is no date of the calendar. */
function dayOf(text: string): number {
  const day = /^\d{4}-\d{2}-\d{2}$/.test(text.trim()) ? Date.parse(text.trim()) / DAY : NaN;
  // Some engines take 30 February for 2 March.
  return Number.isInteger(day) && new Date(day * DAY).toISOString().startsWith(text.trim()) ? day : NaN;
}
