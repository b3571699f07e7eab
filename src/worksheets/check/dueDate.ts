import { described } from './completeness';
import type { Finding } from './finding';
import type { RunSheet } from './runSheet';
import { dateText, serialOf } from './serialDate';

/** The date decided on for the next calibration: no date, not after the last one, or after the prediction band meets a limit. */
export function dueDate(sheet: RunSheet): Finding[] {
  const cell = sheet.cells.cell('next_due');
  if (!cell || cell.value === null) return [];
  const { at } = cell;
  const due = serialOf(cell.value);
  if (due === undefined) return [{ severity: 'wrong', at, message: `The date decided on: ${at} holds ${described(cell.value)}; expected a date, like 2026-11-25` }];
  const found = `The date decided on in ${at}, ${dateText(due)}, is`;
  const days = (sheet.cells.columns('typed_date')?.[0] ?? []).flatMap(({ value }) => (typeof value === 'number' ? [value] : []));
  const last = days.reduce((latest, day) => Math.max(latest, day), 0);
  if (due <= last) return [{ severity: 'wrong', at, message: `${found} not after the last calibration, ${dateText(last)}; expected a day to come` }];
  const met = sheet.cells.cell('value_limit_date');
  if (typeof met?.value !== 'number' || due <= met.value) return [];
  return [{ severity: 'odd', at, message: `${found} after the day on which the prediction band meets a limit, ${dateText(met.value)} (${met.at}); expected it before` }];
}
