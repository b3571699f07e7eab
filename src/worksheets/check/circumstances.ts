import { shown } from '../shown';
import { described } from './completeness';
import type { Finding } from './finding';
import type { RunSheet } from './runSheet';
import { dateText, serialOf } from './serialDate';

const REFERENCE = 23;
/** Degrees that the room may be off the reference without a word. Common practice, no source. */
const ALLOWED = 3;

/** The room's temperature: not recorded, or far from the reference. */
export function temperature(sheet: RunSheet): Finding[] {
  const cell = sheet.cells.cell('temperature');
  if (!cell) return [];
  const { at, value } = cell;
  const reference = sheet.cells.number('reference_temperature') ?? REFERENCE;
  if (value === null) return [{ severity: 'missing', at, message: `The temperature in ${at} is empty; expected that of the room, in °C` }];
  if (typeof value !== 'number') return [{ severity: 'wrong', at, message: `The temperature: ${at} holds ${described(value)}; expected a number, in °C` }];
  if (Math.abs(value - reference) <= ALLOWED + 1e-9) return [];
  return [{
    severity: 'odd', at,
    message: `The temperature in ${at}, ${shown(value)} °C, is off the reference of ${shown(reference)} °C; expected within ${ALLOWED} °C (common practice, no source)`,
  }];
}

/** The date of the run and the date to which the standard is calibrated, where the sheet has both. */
export function standardDue(sheet: RunSheet): Finding[] {
  const date = sheet.cells.cell('date');
  const due = sheet.cells.cell('standard_due');
  if (!date || !due) return [];
  const [run, last] = [serialOf(date.value), serialOf(due.value)];
  if (run === undefined || last === undefined || run <= last) return [];
  return [{
    severity: 'wrong', at: due.at,
    message: `The standard was due on ${dateText(last)} (${due.at}), before the run of ${dateText(run)} (${date.at}); expected a standard in calibration`,
  }];
}

/** Dates that are not there, or are no dates. */
export function dates(sheet: RunSheet): Finding[] {
  return [['date', 'The date of the run'], ['standard_due', 'The date to which the standard is calibrated']].flatMap(([name, what]): Finding[] => {
    const cell = sheet.cells.cell(name);
    if (!cell || serialOf(cell.value) !== undefined) return [];
    if (cell.value === null) return [{ severity: 'missing', at: cell.at, message: `${what} in ${cell.at} is empty` }];
    return [{ severity: 'wrong', at: cell.at, message: `${what}: ${cell.at} holds ${described(cell.value)}; expected a date, like 2026-11-25` }];
  });
}
