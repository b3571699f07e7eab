import { DAY, dateText, EPOCH } from '../check/serialDate';

/** The day of the user's calendar, as a spreadsheet counts days. */
export function today(now: Date = new Date()): number {
  return Date.UTC(now.getFullYear(), now.getMonth(), now.getDate()) / DAY + EPOCH;
}

/** The same as a text, like 2026-11-25. */
export function todayText(now: Date = new Date()): string {
  return dateText(today(now));
}
