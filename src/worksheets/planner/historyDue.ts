import { address, formula } from '../planBuilder';
import { type Desk, RESULT } from './desk';
import { DATE } from './frame';
import type { IntervalId } from './historyResults';
import type { HistoryCells } from './historyTable';

const ASSUMES = 5;
const METHODS: readonly (readonly [id: IntervalId, label: string, assumes: string])[] = [
  ['interval_fixed', 'Fixed: one year', 'use as before, no overload; asks for no history (common practice)'],
  ['interval_staircase', 'Staircase', 'the last finding tells of the next: inside a tenth longer, outside shorter'],
  ['interval_reliability', 'Reliability', 'the part found inside falls exponentially with time, all at one interval'],
  ['interval_band', 'Prediction band', 'the drift goes on as a straight line, scatter normal and even'],
];

/** Next due by each method beside what it assumes, and the earliest of them; gives the next free row. */
export function dueTable({ sheet, width }: Desk, row: number, { last }: HistoryCells, months: (id: IntervalId) => string): number {
  sheet.wide(1, row, width, 'heading', 'Next due by each method, and what it assumes');
  sheet.across(1, row + 1, 'header', ['Method', undefined, undefined, 'Next due']).wide(ASSUMES, row + 1, width - ASSUMES + 1, 'header', 'Assumes');
  METHODS.forEach(([id, label, assumes], i) => {
    const at = row + 2 + i;
    const due = id === 'interval_fixed' ? `EDATE(${last('day')},12)` : `${last('day')}+ROUND(${months(id)}/12*365.25,0)`;
    sheet.put(RESULT.label, at, 'label', label).put(RESULT.value, at, 'result', formula(`IF(${months(id)}="","",IF(ISNUMBER(${months(id)}),${due},${months(id)}))`), DATE);
    sheet.acrossTo(width, ASSUMES, at, 'aside', [assumes]);
    sheet.called(id.replace('interval', 'value_due'), address(RESULT.value, at));
  });
  const first = row + 2;
  const earliest = first + METHODS.length;
  const dues = `${address(RESULT.value, first)}:${address(RESULT.value, earliest - 1)}`;
  sheet.put(RESULT.label, earliest, 'label', 'The earliest of them').put(RESULT.value, earliest, 'result', formula(`IF(COUNT(${dues})=0,"",MIN(${dues}))`), DATE);
  sheet.acrossTo(width, ASSUMES, earliest, 'aside', ['the most careful; the customer decides']);
  sheet.called('value_due_earliest', address(RESULT.value, earliest));
  return earliest + 2;
}
