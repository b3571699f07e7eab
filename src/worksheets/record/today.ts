/** Serial number of 1970-01-01 in a spreadsheet that counts days from 1900. */
const EPOCH = 25_569;
const DAY = 86_400_000;

/** The day of the user's calendar, as a spreadsheet counts days. */
export function today(now: Date = new Date()): number {
  return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY + EPOCH;
}
