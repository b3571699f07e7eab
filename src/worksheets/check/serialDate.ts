/** Serial number of 1970-01-01 in a spreadsheet that counts days from 1900. */
export const EPOCH = 25_569;
export const DAY = 86_400_000;

/** The serial number of a date cell: as it stands, or of a date written as text in the form 2026-11-25. Undefined for the rest. */
export function serialOf(value: unknown): number | undefined {
  if (typeof value === 'number') return value > 0 ? Math.floor(value) : undefined;
  if (typeof value !== 'string' || !/^\s*\d{4}-\d{2}-\d{2}\s*$/.test(value)) return undefined;
  const time = Date.parse(value.trim());
  return Number.isNaN(time) ? undefined : time / DAY + EPOCH;
}

/** A serial number as 2026-11-25; one that is no date of this era, as it is. */
export function dateText(serial: number): string {
  const date = new Date((serial - EPOCH) * DAY);
  return Number.isNaN(date.getTime()) || serial > 2_958_465 ? String(serial) : date.toISOString().slice(0, 10);
}
