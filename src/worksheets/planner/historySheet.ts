import type { SheetPlan } from '../plan';
import { address, formula } from '../planBuilder';
import type { HistoryTemplate } from '../templateSchema';
import { newDesk, PERCENT, RESULT } from './desk';
import { closeSheet, DATE, openSheet } from './frame';
import { plainHistory } from './historyCheck';
import { dueTable } from './historyDue';
import { type HistoryConditions, INTERVAL_LINES, intervalLines, RESULT_LINES, resultLines } from './historyResults';
import { historyTable } from './historyTable';
import type { ItemAnswers } from './itemForm';
import { plotArea, plotRows } from './plots';
import { lineRow, outcomeLine, resultTable } from './resultTable';

/** What a history is planned from. */
export interface HistorySetup {
  readonly item: ItemAnswers;
  /** Calibrations that there is room for. */
  readonly rows: number;
  readonly loadingClass: HistoryTemplate['class'];
  /** Allowed change of output since the first calibration, a fraction. */
  readonly change: number;
  /** Months. */
  readonly now: number;
  readonly least: number;
  readonly greatest: number;
}

const PART = { kind: 'number', least: 0, greatest: 1 } as const;
const MONTHS = { kind: 'number', least: 0 } as const;

/** The sheet of a history, from top to bottom. */
export function planHistory(template: HistoryTemplate, setup: HistorySetup): SheetPlan {
  const { item } = setup;
  const desk = newDesk(item, 0, []);
  const { sheet, formats } = desk;
  const { nextRow, cell } = openSheet(desk, template, [
    { label: 'Allowed change', name: 'allowed_change', value: setup.change, format: PERCENT, rule: PART },
    { label: 'Lower limit of output', name: 'lower_limit', rule: { kind: 'number' } },
    { label: 'Upper limit of output', name: 'upper_limit', rule: { kind: 'number' } },
  ], [
    { label: 'Band holds with', name: 'probability', value: 0.95, format: '0%', rule: PART },
    { label: 'Interval so far, mo.', name: 'interval', value: setup.now, rule: MONTHS },
    { label: 'Inside, aimed at', name: 'target', value: template.interval.target, format: '0%', rule: PART },
    { label: 'Least interval, mo.', name: 'least_interval', value: setup.least, rule: MONTHS },
    { label: 'Greatest interval', name: 'greatest_interval', value: setup.greatest, rule: MONTHS },
    { label: 'Due, as decided', name: 'next_due', format: DATE, rule: { kind: 'date' } },
  ]);
  const conditions: HistoryConditions = {
    capacity: cell('capacity'), ratedOutput: cell('rated_output'), lower: cell('lower_limit'), upper: cell('upper_limit'), probability: cell('probability'),
    allowed: cell('allowed_change'), interval: cell('interval'), target: cell('target'), least: cell('least_interval'), greatest: cell('greatest_interval'),
  };
  const cells = historyTable(desk, nextRow, setup.rows, conditions.capacity);
  // The limits stand as computed until others are typed over them.
  for (const [limit, sign] of [[conditions.lower, '-'], [conditions.upper, '+']] as const) {
    sheet.fill(limit.replace(/\$/g, ''), 'input', formula(`IF(OR(${cells.waiting},${conditions.allowed}=""),"",${cells.first}${sign}ABS(${cells.first})*${conditions.allowed})`), `${formats.output}0`);
  }
  const at = (id: (typeof RESULT_LINES)[number], column: number = RESULT.value) => address(column, lineRow(cells.nextRow, RESULT_LINES.indexOf(id)));
  const table = resultTable(desk, cells.nextRow, 'Results', resultLines(desk, template, setup, cells, conditions, at, at('shift', RESULT.limit)));
  let row = 1 + outcomeLine(desk, table.nextRow + 1, { label: 'Outcome, for the customer', name: 'verdict_overall', verdicts: [table.verdicts], waiting: [cells.waiting] });
  const intervals = resultTable(desk, row, 'Interval until the next calibration', intervalLines(cells, conditions, at('limit_date')));
  const months = (id: (typeof INTERVAL_LINES)[number]) => intervals.values.get(id) ?? '';
  row = dueTable(desk, intervals.nextRow + 1, cells, months);
  const plotRow = row;
  const check = plainHistory(desk, row + plotRows(1), cells, conditions, (id) => (table.values.get(id) ?? intervals.values.get(id)) as string);
  plotArea(desk, plotRow, [{
    title: 'Output at capacity by date', x: 'Date', y: item.outputUnit, series: [{ name: 'Calibrations', x: cells.days, y: cells.outputs, drawn: 'points' }, ...check.series],
  }]);
  return closeSheet(desk, check.nextRow, template);
}
