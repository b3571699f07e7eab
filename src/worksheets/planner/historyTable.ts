import { address, fixed, formula } from '../planBuilder';
import { type Desk, PERCENT } from './desk';
import { DATE } from './frame';

/** Columns of the table of calibrations. */
const [DAY, OUTPUT, ZERO, UNCERTAINTY, FOUND, SINCE_LAST, SINCE_FIRST, REMARK] = [1, 2, 3, 4, 5, 6, 7, 8];
/** Columns of the table of the last two, after its label. */
const LAST = { day: 4, output: 5, zero: 6, uncertainty: 7, found: 8, constant: 9, slope: 10 } as const;
const FEWEST = 3;
/** Words right of figures stand off from them. Four sections: a format of text alone would make text of whatever is typed. */
const INSET = 'General;General;General;"  "@';

/** Ranges and cells that formulas of a history name. */
export interface HistoryCells {
  readonly days: string;
  readonly outputs: string;
  /** Changes since the calibration before. */
  readonly shifts: string;
  /** Cell of the number of calibrations. */
  readonly count: string;
  /** True while there are fewer than three calibrations, or one is not complete; a list of conditions. */
  readonly waiting: string;
  /** Cells of the last calibration and of the one before. */
  readonly last: (what: keyof typeof LAST) => string;
  readonly before: (what: keyof typeof LAST) => string;
  /** Coefficients of the line through zero at capacity, constant and slope. */
  readonly lastLine: string;
  readonly lineBefore: string;
  /** Two cells: how many calibrations found the item inside, and outside. */
  readonly counts: string;
  /** Output at the first calibration, as an expression. */
  readonly first: string;
  readonly nextRow: number;
}

/** Writes the table of calibrations and, below it, the last two of them. */
export function historyTable(desk: Desk, row: number, rows: number, capacity: string): HistoryCells {
  const { sheet, width, item, formats } = desk;
  const { outputUnit } = item;
  const firstRow = row + 3;
  const counted = firstRow + rows;
  const range = (column: number) => `${address(column, firstRow)}:${address(column, counted - 1)}`;
  const [days, outputs, found] = [range(DAY), range(OUTPUT), range(FOUND)];
  sheet.wide(1, row, width, 'heading', 'Calibrations by date: output at capacity, as found');
  sheet.across(1, row + 1, 'header', ['Date', 'Output', 'Zero', 'Uncertainty', 'Found', 'Change', 'Change', 'Remark', undefined, undefined]);
  sheet.across(1, row + 2, 'header', ['', outputUnit, outputUnit, 'k = 2, of reading', 'its limits', 'since before', 'since first', '', undefined, undefined]);
  sheet.restyle(FOUND, row + 1, 2, 'header', INSET);
  for (let at = firstRow; at < counted; at += 1) {
    const [output, above] = [address(OUTPUT, at), address(OUTPUT, at - 1)];
    sheet.put(DAY, at, 'input', undefined, DATE).put(OUTPUT, at, 'input', undefined, formats.output).put(ZERO, at, 'input', undefined, formats.output);
    sheet.put(UNCERTAINTY, at, 'input', undefined, PERCENT).put(FOUND, at, 'input', undefined, INSET).wide(REMARK, at, width - REMARK + 1, 'input');
    sheet.put(SINCE_LAST, at, 'result', at === firstRow ? undefined : formula(`IF(OR(${output}="",N(${above})=0),"",${output}/${above}-1)`), PERCENT);
    sheet.put(SINCE_FIRST, at, 'result', at === firstRow ? undefined : formula(`IF(OR(${output}="",N(${address(OUTPUT, firstRow)})=0),"",${output}/${address(OUTPUT, firstRow)}-1)`), PERCENT);
  }
  sheet.validate({ range: days, rule: { kind: 'date' }, message: 'Expected the date of the calibration, like 2026-11-25, or nothing.' });
  sheet.validate({ range: `${address(OUTPUT, firstRow)}:${address(ZERO, counted - 1)}`, rule: { kind: 'number' }, message: `Expected an output in ${outputUnit}, as a number, or nothing.` });
  sheet.validate({ range: range(UNCERTAINTY), rule: { kind: 'number', least: 0 }, message: 'Expected the uncertainty (k = 2) as a fraction of reading, like 0.02 %, or nothing.' });
  sheet.validate({ range: found, rule: { kind: 'list', words: ['inside', 'outside'] }, message: 'Expected inside or outside: whether the item was found within its limits.' });
  const [count, needed] = [fixed(OUTPUT, counted), fixed(UNCERTAINTY, counted)];
  sheet.put(DAY, counted, 'label', 'calibrations').put(OUTPUT, counted, 'result', formula(`SUMPRODUCT(ISNUMBER(${days})*ISNUMBER(${outputs}))`), '0');
  sheet.put(ZERO, counted, 'aside', 'needed').put(UNCERTAINTY, counted, 'reference', FEWEST, '0');
  sheet.called('needed_rows', address(UNCERTAINTY, counted)).called('output_unit', address(OUTPUT, row + 2));
  sheet.called('typed_date', days).called('typed_output', outputs).called('typed_found', found);
  const waiting = `${count}<${needed},COUNT(${days})<>${count},COUNT(${outputs})<>${count}`;
  const two = counted + 2;
  lastTwo(desk, two, { days, range, waiting, capacity });
  const cell = (at: number) => (what: keyof typeof LAST) => fixed(LAST[what], at);
  const line = (at: number) => `${address(LAST.constant, at)}:${address(LAST.slope, at)}`;
  const counts = two + 4;
  sheet.put(1, counts, 'label', 'Found inside, outside, so far').put(4, counts, 'result', formula(`COUNTIF(${found},"inside")`), '0').put(5, counts, 'result', formula(`COUNTIF(${found},"outside")`), '0');
  return {
    days, outputs, shifts: range(SINCE_LAST), count, waiting, last: cell(two + 3), before: cell(two + 2), lastLine: line(two + 3), lineBefore: line(two + 2),
    counts: `${address(4, counts)}:${address(5, counts)}`, first: `INDEX(${outputs},MATCH(MIN(${days}),${days},0))`, nextRow: counts + 2,
  };
}

/** The last calibration and the one before, found by their dates, each with its line through zero: 0 and output/capacity. */
function lastTwo({ sheet, width, item, formats }: Desk, row: number, { days, range, waiting, capacity }: { readonly days: string; readonly range: (column: number) => string; readonly waiting: string; readonly capacity: string }): void {
  sheet.wide(1, row, width, 'heading', 'The last two');
  sheet.across(1, row + 1, 'header', ['', undefined, undefined, 'Date', 'Output', 'Zero', 'Uncertainty', 'Found', 'A0', `A1, per ${item.unit}`]);
  [['The one before', 2], ['The last', 1]].forEach(([label, nth], i) => {
    const at = row + 2 + i;
    const day = address(LAST.day, at);
    const of = (column: number) => `INDEX(${range(column)},MATCH(${day},${days},0))`;
    const once = (text: string) => formula(`IF(${day}="","",IF(${text}="","",${text}))`);
    sheet.put(1, at, 'label', label).put(LAST.day, at, 'result', formula(`IF(OR(${waiting}),"",LARGE(${days},${nth}))`), DATE);
    sheet.put(LAST.output, at, 'result', once(of(OUTPUT)), formats.output).put(LAST.zero, at, 'result', once(of(ZERO)), formats.output);
    sheet.put(LAST.uncertainty, at, 'result', once(of(UNCERTAINTY)), PERCENT).put(LAST.found, at, 'verdict', once(of(FOUND)));
    sheet.put(LAST.constant, at, 'reference', 0, '0').put(LAST.slope, at, 'result', formula(`IF(${address(LAST.output, at)}="","",${address(LAST.output, at)}/${capacity})`), `${formats.output}00`);
  });
}
