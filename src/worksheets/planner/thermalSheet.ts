import type { SheetPlan } from '../plan';
import { address, fixed, formula, type Formula } from '../planBuilder';
import type { ThermalTemplate } from '../templateSchema';
import { type Desk, formatFor, newDesk, RESULT, rounded } from './desk';
import { closeSheet, openSheet } from './frame';
import type { ItemAnswers } from './itemForm';
import { plotArea } from './plots';
import { lineRow, outcomeLine, type ResultLine, resultTable } from './resultTable';
import { plainThermal } from './thermalCheck';

/** What a thermal sheet is planned from. */
export interface ThermalSetup {
  readonly item: ItemAnswers;
  readonly direction: ThermalTemplate['direction'];
  /** Percent of capacity. */
  readonly load: number;
  /** Of the chamber, °C, in the order taken. */
  readonly temperatures: readonly number[];
  /** Least minutes at a temperature. */
  readonly soak: number;
}

/** Ranges and cells that formulas of a thermal sheet name. */
export interface ThermalCells {
  readonly chamber: string;
  readonly cell: string;
  readonly soak: string;
  readonly zeros: string;
  readonly loaded: string;
  readonly spans: string;
  readonly ratedOutput: string;
  readonly reference: string;
  /** True while readings are missing, as a condition in formulas. */
  readonly waiting: string;
  readonly rows: number;
}

/** Columns of the table of readings. */
const [CHAMBER, CELL, SOAK, ZERO, LOADED, SPAN, ZERO_CHANGE, ZERO_LINE, SPAN_CHANGE, SPAN_LINE] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10];
/** Effects per degree: parts of a millionth. */
const PER_DEGREE = '0.00000%';
const PER_TEN = '0.0000%';

/** Lines of the results, in the order of the sheet. */
const LINES = [
  'zero_slope', 'zero_effect', 'zero_effect_10', 'zero_error', 'zero_at_reference', 'zero_deviation',
  'span_effect', 'span_effect_10', 'span_error', 'span_at_reference', 'span_deviation', 'soak', 'settled',
] as const;
type LineId = (typeof LINES)[number];

/** The sheet of a thermal run, from top to bottom. */
export function planThermal(template: ThermalTemplate, setup: ThermalSetup): SheetPlan {
  const { item, temperatures, direction } = setup;
  const desk = newDesk(item, 0, [rounded((item.capacity * setup.load) / 100)]);
  const { sheet } = desk;
  const { nextRow, cell } = openSheet(desk, template, [
    { label: `Load for the span, ${item.unit}`, name: 'load', value: rounded((item.capacity * setup.load) / 100), rule: { kind: 'number', least: 0 } },
    { label: 'Direction', value: direction },
    { label: 'Chamber and purge gas' },
  ]);
  const firstRow = nextRow + 3;
  const range = (column: number) => `${address(column, firstRow)}:${address(column, firstRow + temperatures.length - 1)}`;
  const counted = firstRow + temperatures.length;
  const [complete, needed] = [address(CELL, counted), address(ZERO, counted)];
  const cells: ThermalCells = {
    chamber: range(CHAMBER), cell: range(CELL), soak: range(SOAK), zeros: range(ZERO), loaded: range(LOADED), spans: range(SPAN),
    ratedOutput: cell('rated_output'), reference: cell('reference_temperature'), rows: temperatures.length,
    waiting: `${complete}<${needed},COUNT(${address(CELL, firstRow)}:${address(LOADED, counted - 1)})<>4*${complete}`,
  };
  const tableRow = counted + 2;
  const at = (id: LineId) => address(4, lineRow(tableRow, LINES.indexOf(id)));
  writeReadings(desk, nextRow, setup, cells, at);
  const table = resultTable(desk, tableRow, 'Results', LINES.map((id) => resultLine(desk, template, setup, cells, at, id)));
  let row = 1 + outcomeLine(desk, table.nextRow + 1, {
    label: 'Outcome, for the customer', name: 'verdict_overall', verdicts: [table.verdicts], waiting: [cells.waiting, `${cells.ratedOutput}=""`],
  });
  row = plotArea(desk, row, [
    { title: 'Zero against temperature', x: 'Temperature of the cell, °C', y: 'of rated output', series: [
      { name: 'Zero, change from the reference', x: range(CELL), y: range(ZERO_CHANGE), drawn: 'points' }, { name: 'Fitted line', x: range(CELL), y: range(ZERO_LINE), drawn: 'line' },
    ] },
    { title: 'Span against temperature', x: 'Temperature of the cell, °C', y: 'of span', series: [
      { name: 'Span, change from the reference', x: range(CELL), y: range(SPAN_CHANGE), drawn: 'points' }, { name: 'Fitted line', x: range(CELL), y: range(SPAN_LINE), drawn: 'line' },
    ] },
  ]);
  row = plainThermal(desk, row, cells, at);
  const [soak, least] = [address(SOAK, firstRow), fixed(RESULT.limit, lineRow(tableRow, LINES.indexOf('soak')))];
  sheet.highlight({ range: cells.soak, formula: `=AND(ISNUMBER(${soak}),${soak}<N(${least}))`, look: 'doubt' });
  return closeSheet(desk, row, template);
}

/** What is typed at each temperature; beside it the span, and what zero and span have changed by, with their lines. */
function writeReadings({ sheet, width, item, formats }: Desk, row: number, { temperatures, direction }: ThermalSetup, cells: ThermalCells, at: (id: LineId) => string): void {
  const { outputUnit } = item;
  const firstRow = row + 3;
  sheet.wide(1, row, width, 'heading', `Readings: zero and output in ${direction} at each temperature`);
  sheet.across(1, row + 1, 'header', ['Chamber', 'Cell', 'Soak', 'Zero', 'Under load', 'Span', 'Zero change', 'Its line', 'Span change', 'Its line']);
  sheet.across(1, row + 2, 'header', ['°C', '°C', 'min', outputUnit, outputUnit, outputUnit, 'of RO', 'of RO', 'of span', 'of span']);
  sheet.down(CHAMBER, firstRow, 'input', temperatures, formatFor([0.1, ...temperatures]));
  temperatures.forEach((_, i) => {
    const own = (column: number) => address(column, firstRow + i);
    sheet.put(CELL, firstRow + i, 'input', undefined, '0.0').put(SOAK, firstRow + i, 'input', undefined, '0');
    sheet.put(ZERO, firstRow + i, 'input', undefined, formats.output).put(LOADED, firstRow + i, 'input', undefined, formats.output);
    sheet.put(SPAN, firstRow + i, 'result', formula(`IF(COUNT(${own(CELL)}:${own(LOADED)})<4,"",${own(LOADED)}-${own(ZERO)})`), formats.output);
    const off = `(${own(CELL)}-${cells.reference})`;
    const once = (needs: LineId, text: string): Formula => formula(`IF(OR(${own(SPAN)}="",${at(needs)}=""),"",${text})`);
    sheet.put(ZERO_CHANGE, firstRow + i, 'result', once('zero_effect', `(${own(ZERO)}-${at('zero_at_reference')})/${cells.ratedOutput}`), PER_TEN);
    sheet.put(ZERO_LINE, firstRow + i, 'result', once('zero_effect', `${at('zero_effect')}*${off}`), PER_TEN);
    sheet.put(SPAN_CHANGE, firstRow + i, 'result', once('span_effect', `${own(SPAN)}/${at('span_at_reference')}-1`), PER_TEN);
    sheet.put(SPAN_LINE, firstRow + i, 'result', once('span_effect', `${at('span_effect')}*${off}`), PER_TEN);
  });
  const counted = firstRow + temperatures.length;
  sheet.put(CHAMBER, counted, 'label', 'complete').put(CELL, counted, 'result', formula(`COUNT(${cells.spans})`), '0');
  sheet.put(SOAK, counted, 'aside', 'needed').put(ZERO, counted, 'input', temperatures.length, '0');
  sheet.validate({ range: address(ZERO, counted), rule: { kind: 'whole', least: 3, greatest: temperatures.length }, message: `Expected a whole number from 3 to ${temperatures.length}: lower it if a temperature was left out on purpose.` });
  sheet.validate({ range: cells.chamber, rule: { kind: 'number', least: -200, greatest: 500 }, message: 'Expected the temperature of the chamber in °C, as a number.' });
  sheet.validate({ range: cells.cell, rule: { kind: 'number', least: -200, greatest: 500 }, message: 'Expected the temperature of the cell in °C, as a number, or nothing.' });
  sheet.validate({ range: cells.soak, rule: { kind: 'number', least: 0 }, message: 'Expected the minutes at this temperature, 0 or more, or nothing.' });
  sheet.validate({ range: `${cells.zeros.split(':')[0]}:${cells.loaded.split(':')[1]}`, rule: { kind: 'number' }, message: `Expected a reading in ${outputUnit}, as a number, or nothing.` });
  sheet.called('output_unit', address(ZERO, row + 2)).called('needed_rows', address(ZERO, counted)).called('planned_temperature', cells.chamber);
  sheet.called('typed_temperature', cells.cell).called('typed_soak', cells.soak).called('typed_zero', cells.zeros).called('typed_loaded', cells.loaded);
  const range = (column: number) => `${address(column, firstRow)}:${address(column, counted - 1)}`;
  sheet.called('zero_changes', range(ZERO_CHANGE)).called('zero_line', range(ZERO_LINE)).called('span_changes', range(SPAN_CHANGE)).called('span_line', range(SPAN_LINE));
}

function resultLine({ item, formats }: Desk, { limits }: ThermalTemplate, setup: ThermalSetup, cells: ThermalCells, at: (id: LineId) => string, id: LineId): ResultLine {
  const { cell, zeros, loaded, spans, reference, ratedOutput } = cells;
  const { outputUnit } = item;
  const data = `${cell},${zeros},${spans},${reference}`;
  const once = (text: string): Formula => formula(`IF(OR(${cells.waiting}),"",${text})`);
  const ofRated = (text: string): Formula => formula(`IF(OR(${cells.waiting},${ratedOutput}=""),"",${text})`);
  const report = (line: 1 | 2, column: 2 | 3) => `INDEX(PROVE.TEMPREPORT(${data},FALSE),${line},${column})`;
  const judged = (limit: number | undefined, limitFormat: string, rule: 'magnitude' | 'greatest' | 'least' = 'magnitude') => ({ judged: { limit, limitFormat, rule, name: id } });
  const finer = `${formats.output}0`;
  // The value of largest magnitude, its sign kept; rows left out count as 0.
  const worst = (deviations: string) => `IF(SUMPRODUCT(MAX(${deviations}))>=-SUMPRODUCT(MIN(${deviations})),SUMPRODUCT(MAX(${deviations})),SUMPRODUCT(MIN(${deviations})))`;
  const off = `(${cell}-${reference})`;
  const lines: Readonly<Record<LineId, Omit<ResultLine, 'id'>>> = {
    zero_slope: { label: 'Zero effect, as output per °C', format: '0.0E+00', unit: `${outputUnit}/°C`, value: once(`INDEX(PROVE.TEMPEFFECT(${data},FALSE),1,1)`), function: 'PROVE.TEMPEFFECT(T,zeros,spans,ref)' },
    zero_effect: { label: 'Zero effect, per °C', format: PER_DEGREE, unit: 'of RO', value: ofRated(`${at('zero_slope')}/${ratedOutput}`), function: 'slope/rated output' },
    zero_effect_10: { label: 'Zero effect, per 10 °C', format: PER_TEN, unit: 'of RO', value: ofRated(`10*${at('zero_effect')}`), function: '10 × effect per °C', ...judged(limits.zero_effect, PER_TEN) },
    zero_error: { label: 'Its standard error, per 10 °C', format: PER_TEN, unit: 'of RO', value: ofRated(`10*${report(1, 3)}/${ratedOutput}`), function: 'PROVE.TEMPREPORT(T,zeros,spans,ref)' },
    zero_at_reference: { label: 'Zero at the reference', format: finer, unit: outputUnit, value: once(`AVERAGE(${zeros})+${at('zero_slope')}*(${reference}-AVERAGE(${cell}))`), function: 'mean + slope·(ref − mean T)' },
    zero_deviation: { label: 'Zero, worst off its line', format: PER_TEN, unit: 'of RO', value: ofRated(worst(`ISNUMBER(${spans})*(${zeros}-${at('zero_at_reference')}-${at('zero_slope')}*${off})/${ratedOutput}`)), function: 'largest zero change − its line', ...judged(limits.zero_deviation, PER_TEN) },
    span_effect: { label: 'Span effect, per °C', format: PER_DEGREE, unit: 'of span', value: once(`INDEX(PROVE.TEMPEFFECT(${data},FALSE),1,2)`), function: 'PROVE.TEMPEFFECT(T,zeros,spans,ref)' },
    span_effect_10: { label: 'Span effect, per 10 °C', format: PER_TEN, unit: 'of span', value: once(`10*${at('span_effect')}`), function: '10 × effect per °C', ...judged(limits.span_effect, PER_TEN) },
    span_error: { label: 'Its standard error, per 10 °C', format: PER_TEN, unit: 'of span', value: once(`10*${report(2, 3)}`), function: 'PROVE.TEMPREPORT(T,zeros,spans,ref)' },
    span_at_reference: { label: 'Span at the reference', format: finer, unit: outputUnit, value: once(`AVERAGE(${spans})/(1+${at('span_effect')}*(AVERAGE(${cell})-${reference}))`), function: 'mean/(1 + effect·(mean T − ref))' },
    span_deviation: { label: 'Span, worst off its line', format: PER_TEN, unit: 'of span', value: once(worst(`ISNUMBER(${spans})*((${loaded}-${zeros})/${at('span_at_reference')}-1-${at('span_effect')}*${off})`)), function: 'largest span change − its line', ...judged(limits.span_deviation, PER_TEN) },
    soak: { label: 'Shortest soak', format: '0', unit: 'min', value: once(`MIN(${cells.soak})`), function: 'least of the minutes typed', ...judged(setup.soak, '0', 'least') },
    settled: { label: 'Cell off the chamber, at most', format: '0.0', unit: '°C', value: once(`SUMPRODUCT(MAX(ISNUMBER(${spans})*ABS(${cell}-${cells.chamber})))`), function: 'largest |cell − chamber|', ...judged(limits.settled, '0.0', 'greatest') },
  };
  return { id, ...lines[id] };
}
