import type { DecimalMark } from './logFields';

const DAY = 86_400;
const CLOCK = /^(\d{1,3}):([0-5]?\d)(?::([0-5]?\d(?:[.,]\d+)?))?(?:\s*([ap])\.?m\.?)?$/i;
const DATE = /^(?:(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})|(\d{1,2})([./])(\d{1,2})\5(\d{4}))$/;
const ZONE = /(?:Z|[+-]\d{2}:?\d{2})$/i;

/** Seconds since midnight of a time like 9:05, 09:05:12.250, 09:05:12,250 or 1:05:12 PM; undefined if it is none. */
export function clockSeconds(field: string): number | undefined {
  const match = CLOCK.exec(field);
  if (!match) return undefined;
  const [, hours, minutes, seconds = '0', half] = match;
  const hour = half ? (Number(hours) % 12) + (half.toLowerCase() === 'p' ? 12 : 0) : Number(hours);
  return hour * 3600 + Number(minutes) * 60 + Number(seconds.replace(',', '.'));
}

/**
 * Seconds at the start of a day like 2026-11-25, 2026/11/25, 25.11.2026 or 25/11/2026; undefined if it is none. With slashes
 * the month comes first unless that is no month: which of the two it is matters only in a log that goes past midnight.
 */
export function dateSeconds(field: string): number | undefined {
  const match = DATE.exec(field);
  if (!match) return undefined;
  const [, year, month, day, first, mark, second, last] = match;
  if (year) return dayOf(Number(year), Number(month), Number(day));
  const monthFirst = mark === '/' && Number(first) <= 12;
  return dayOf(Number(last), Number(monthFirst ? first : second), Number(monthFirst ? second : first));
}

function dayOf(year: number, month: number, day: number): number | undefined {
  const at = new Date(Date.UTC(year, month - 1, day));
  return at.getUTCMonth() === month - 1 && at.getUTCDate() === day ? at.getTime() / 1000 : undefined;
}

/** Seconds of a day and time in one field, like 2026-11-25T09:05:12.250Z. The zone is left out of account: one log has one. */
export function momentSeconds(field: string): number | undefined {
  const parts = /^(\S+?)(?:T|\s+)(\d.*)$/i.exec(field);
  if (!parts) return undefined;
  const date = dateSeconds(parts[1]);
  const clock = clockSeconds(parts[2].replace(ZONE, '').trim());
  return date === undefined || clock === undefined ? undefined : date + clock;
}

/** Seconds in a unit of time as a head names it; undefined for other words. */
export function secondsIn(unit: string | undefined): number | undefined {
  switch (unit?.toLowerCase()) {
    case 's': case 'sec': case 'secs': case 'second': case 'seconds': return 1;
    case 'ms': case 'msec': case 'milliseconds': return 1e-3;
    case 'us': case 'µs': case 'μs': case 'microseconds': return 1e-6;
    case 'min': case 'minutes': return 60;
    case 'h': case 'hr': case 'hours': return 3600;
    default: return undefined;
  }
}

/** How a column, or two side by side, tell the time. */
export type TimeKind = 'number' | 'clock' | 'date' | 'date and clock';

/** What a field of time is expected to look like, in words. */
export function timeExample(kind: TimeKind, decimal: DecimalMark): string {
  if (kind === 'number') return `a time as a number, like 12${decimal}5`;
  if (kind === 'clock') return 'a time like 09:05:12';
  return kind === 'date' ? 'a date and time like 2026-11-25 09:05:12' : 'a date like 2026-11-25 and a time like 09:05:12';
}

/** A clock that falls by more than half a day has gone past midnight: the seconds to add from there on. */
export function pastMidnight(before: number, now: number): number {
  return before - now > DAY / 2 ? DAY : 0;
}
