import { STABILITY_LIMITS } from '../../metrology/stability';
import { formula, type Formula } from '../planBuilder';
import type { HistoryTemplate } from '../templateSchema';
import { type Desk, PERCENT } from './desk';
import { DATE } from './frame';
import type { HistorySetup } from './historySheet';
import type { HistoryCells } from './historyTable';
import type { ResultLine } from './resultTable';

const FINE = '0.0000%';
const MONTHS = '0.0';

/** Cells of the conditions that results are computed with. */
export interface HistoryConditions {
  readonly capacity: string;
  readonly ratedOutput: string;
  readonly lower: string;
  readonly upper: string;
  readonly probability: string;
  readonly allowed: string;
  readonly interval: string;
  readonly target: string;
  readonly least: string;
  readonly greatest: string;
}

/** Lines of the results, in the order of the sheet; then those of the intervals. */
export const RESULT_LINES = ['drift', 'drift_relative', 'drift_error', 'limit_date', 'limit_side', 'shift', 'worst_shift', 'change', 'zero_shift', 'en_ratio'] as const;
export const INTERVAL_LINES = ['interval_fixed', 'interval_staircase', 'interval_reliability', 'interval_band'] as const;
type ResultId = (typeof RESULT_LINES)[number];
export type IntervalId = (typeof INTERVAL_LINES)[number];

/** A year, which a transducer gets as a rule where there is no history to go by. */
const YEAR_MONTHS = 12;

export function resultLines({ item }: Desk, { limits }: HistoryTemplate, { loadingClass }: HistorySetup, cells: HistoryCells, conditions: HistoryConditions, at: (id: ResultId) => string, limitOfShift: string): ResultLine[] {
  const { days, outputs, shifts, last, before } = cells;
  const { lower, upper, probability, capacity, ratedOutput } = conditions;
  const once = (text: string): Formula => formula(`IF(OR(${cells.waiting}),"",${text})`);
  const drift = (column: number) => `INDEX(PROVE.DRIFT(${days},${outputs},${lower},${upper},${probability},FALSE),1,${column})`;
  const words = 'PROVE.DRIFT(dates,values,lower,upper)';
  const judged = (name: string, limit: number | Formula | undefined) => ({ judged: { limit, limitFormat: PERCENT, rule: 'magnitude' as const, name } });
  const lines: Readonly<Record<ResultId, Omit<ResultLine, 'id'>>> = {
    drift: { label: 'Drift per year', format: '0.0E+00', unit: item.outputUnit, value: once(drift(1)), function: words },
    drift_relative: { label: 'Drift per year, of the last output', format: FINE, unit: 'of reading', value: once(`${at('drift')}/${last('output')}`), function: 'drift/last output', ...judged('drift', limits.drift) },
    drift_error: { label: 'Its standard error', format: FINE, unit: 'of reading', value: once(`${drift(2)}/ABS(${last('output')})`), function: words },
    limit_date: {
      label: 'Prediction band meets a limit on', format: DATE, unit: '', function: words,
      value: formula(`IF(OR(${cells.waiting},AND(${lower}="",${upper}="")),"",IFNA(${drift(3)},IF(${drift(4)}="","never","past")))`),
    },
    limit_side: { label: 'Which limit', format: '0', unit: '', value: formula(`IF(${at('limit_date')}="","",IF(${drift(4)}="","none",${drift(4)}))`), function: words },
    shift: {
      label: `Shift since the one before, class ${loadingClass}`, format: PERCENT, unit: 'of reading', ...judged('shift', STABILITY_LIMITS[loadingClass]),
      value: once(`INDEX(PROVE.STABILITY(${cells.lineBefore},${cells.lastLine},${capacity},"${loadingClass}",${limitOfShift},FALSE),1,1)`), function: 'PROVE.STABILITY(old,new,capacity,class)',
    },
    worst_shift: { label: 'Worst shift of the history', format: PERCENT, unit: 'of reading', value: once(`IF(MAX(${shifts})>=-MIN(${shifts}),MAX(${shifts}),MIN(${shifts}))`), function: 'largest change since before' },
    change: { label: 'Change since the first', format: PERCENT, unit: 'of reading', value: once(`${last('output')}/${cells.first}-1`), function: 'last/first − 1', ...judged('change', formula(`IF(${conditions.allowed}="","",${conditions.allowed})`)) },
    zero_shift: {
      label: 'Shift of zero since the one before', format: PERCENT, unit: 'of RO', function: 'PROVE.ZEROBALANCE(shift,output)', ...judged('zero_shift', limits.zero_shift),
      value: formula(`IF(OR(${last('zero')}="",${before('zero')}="",${ratedOutput}=""),"",PROVE.ZEROBALANCE(${last('zero')}-${before('zero')},${ratedOutput}))`),
    },
    en_ratio: {
      label: 'Shift against its uncertainty, En', format: '0.00', unit: '', function: 'PROVE.ENRATIO(new,U,old,U): real above 1',
      value: formula(`IF(OR(N(${last('uncertainty')})=0,N(${before('uncertainty')})=0),"",PROVE.ENRATIO(${ofReading(last)},${ofReading(before)}))`),
    },
  };
  return RESULT_LINES.map((id) => ({ id, ...lines[id] }));
}

/** An output and its uncertainty in output units, as two arguments. */
function ofReading(cell: HistoryCells['last']): string {
  return `${cell('output')},ABS(${cell('uncertainty')}*${cell('output')})`;
}

/** Months until the next calibration by each method. */
export function intervalLines(cells: HistoryCells, { interval, target, least, greatest }: HistoryConditions, limitDate: string): ResultLine[] {
  const { last, counts } = cells;
  const noWord = `${last('found')}="",${interval}=""`;
  const lines: Readonly<Record<IntervalId, Omit<ResultLine, 'id' | 'format' | 'unit'>>> = {
    interval_fixed: { label: 'Fixed: one year', value: formula(`IF(OR(${cells.waiting}),"",${YEAR_MONTHS})`), function: 'twelve months' },
    interval_staircase: {
      label: 'Staircase', function: 'PROVE.INTERVAL(now,found,target)',
      value: formula(`IF(OR(${noWord}),"",PROVE.INTERVAL(${interval},${last('found')},${target},"staircase",${least},${greatest}))`),
    },
    interval_reliability: {
      label: 'Reliability', function: 'PROVE.INTERVAL(now,counts,target,…)',
      value: formula(`IF(OR(${noWord}),"",PROVE.INTERVAL(${interval},${counts},${target},"reliability",${least},${greatest}))`),
    },
    interval_band: {
      label: 'Prediction band', function: 'from the last to the band’s date',
      value: formula(`IF(${limitDate}="","",IF(${limitDate}="past",${least},IF(${limitDate}="never",IF(${greatest}="","no end",${greatest}),MIN(MAX((${limitDate}-${last('day')})/365.25*12,${least}),${greatest}))))`),
    },
  };
  return INTERVAL_LINES.map((id) => ({ id, format: MONTHS, unit: 'months', ...lines[id] }));
}
