import type { SheetPlan } from '../plan';
import { address, formula, type Formula } from '../planBuilder';
import type { SummingTemplate } from '../templateSchema';
import { checkHeading, type CheckLine, checkLines } from './checkLines';
import { type Desk, newDesk, PERCENT, RESULT } from './desk';
import { closeSheet, openSheet } from './frame';
import type { ItemAnswers } from './itemForm';
import { outcomeLine, resultTable } from './resultTable';

/** What a sheet of a summing box is planned from. */
export interface SummingSetup {
  readonly item: ItemAnswers;
  /** Cells joined in parallel. */
  readonly cells: number;
}

/** Columns of the table of cells. */
const ZERO = 4;
const LOADED = 5;
const OHMS = 6;
const CHANGE = 7;
const SHARE = 8;

/** Outputs of cells joined in parallel, and of their box. */
export function planSumming(template: SummingTemplate, { item, cells }: SummingSetup): SheetPlan {
  const desk = newDesk(item, 0, []);
  const { formats } = desk;
  const { limits } = template;
  const { nextRow, cell } = openSheet(desk, template);
  const first = nextRow + 3;
  const range = (column: number) => `${address(column, first)}:${address(column, first + cells - 1)}`;
  const [zeros, loaded, ohms] = [range(ZERO), range(LOADED), range(OHMS)];
  const box = boxCells(desk, first + cells + 1);
  const ratedOutput = cell('rated_output');
  const missing = [`COUNT(${zeros})<${cells}`, `COUNT(${loaded})<${cells}`, `AND(COUNT(${ohms})>0,COUNT(${ohms})<${cells})`];
  const once = (text: string, more: readonly string[] = []): Formula => formula(`IF(OR(${[...missing, ...more].join(',')}),"",${text})`);
  const sum = (outputs: string) => `IF(COUNT(${ohms})=0,PROVE.SUMMINGOUTPUT(${outputs}),PROVE.SUMMINGOUTPUT(${outputs},${ohms}))`;
  const change = `(${sum(loaded)}-${sum(zeros)})`;
  const noZero = [`${box.zero}=""`, `${ratedOutput}=""`];
  const noChange = [`${box.zero}=""`, `${box.loaded}=""`];
  const judged = (name: 'zero_difference' | 'change_difference') => ({ limit: limits[name], limitFormat: PERCENT, rule: 'magnitude' as const, name });
  const finer = `${formats.output}0`;
  const table = resultTable(desk, box.nextRow, 'Results', [
    { id: 'box_zero', label: 'Box without load, expected', format: finer, unit: item.outputUnit, function: 'PROVE.SUMMINGOUTPUT(zeros,R)', value: once(sum(zeros)) },
    { id: 'box_loaded', label: 'Box under load, expected', format: finer, unit: item.outputUnit, function: 'PROVE.SUMMINGOUTPUT(loaded,R)', value: once(sum(loaded)) },
    { id: 'box_change', label: 'Change of the box, expected', format: finer, unit: item.outputUnit, function: 'loaded − zero', value: once(change) },
    { id: 'zero_difference', label: 'Zero read, less expected', format: PERCENT, unit: 'of RO', function: '(read − expected)/rated output', value: once(`(${box.zero}-${sum(zeros)})/${ratedOutput}`, noZero), judged: judged('zero_difference') },
    { id: 'change_difference', label: 'Change read against expected', format: PERCENT, unit: 'of it', function: 'read/expected − 1', value: once(`(${box.loaded}-${box.zero})/${change}-1`, noChange), judged: judged('change_difference') },
  ]);
  cellTable(desk, nextRow, cells, { missing, ohms, boxChange: table.values.get('box_change') as string });
  let row = 1 + outcomeLine(desk, table.nextRow + 1, { label: 'Outcome', name: 'verdict_overall', verdicts: [table.verdicts], waiting: [...missing, ...noZero, ...noChange] });
  const plainSum = (outputs: string) => `IF(COUNT(${ohms})=0,SUM(${outputs})/${cells},SUMPRODUCT(${outputs}/${ohms})/SUMPRODUCT(1/${ohms}))`;
  const plainChange = `(${plainSum(loaded)}-${plainSum(zeros)})`;
  const line = (id: string, label: string, format: string, plain: Formula, words: string): CheckLine => {
    const own = table.values.get(id) as string;
    return { id, label, own: `IF(${own}="","",${own})`, plain, format, scale: '1', words };
  };
  row = checkLines(desk, checkHeading(desk, row), [
    line('box_zero', 'Box without load', finer, once(plainSum(zeros)), 'Σ(X/R)/Σ(1/R); the mean without R'),
    line('box_loaded', 'Box under load', finer, once(plainSum(loaded)), 'Σ(X/R)/Σ(1/R); the mean without R'),
    line('box_change', 'Change of the box', finer, once(plainChange), 'loaded − zero'),
    line('zero_difference', 'Zero read', PERCENT, once(`(${box.zero}-${plainSum(zeros)})/${ratedOutput}`, noZero), '(read − expected)/rated output'),
    line('change_difference', 'Change read', PERCENT, once(`(${box.loaded}-${box.zero})/${plainChange}-1`, noChange), 'read/expected − 1'),
  ]);
  return closeSheet(desk, row, template);
}

/** What every cell gives by itself, and its part of the change of the box. */
function cellTable({ sheet, width, item, formats }: Desk, row: number, cells: number, { missing, ohms, boxChange }: { missing: readonly string[]; ohms: string; boxChange: string }): void {
  const { outputUnit } = item;
  const first = row + 3;
  const range = (column: number) => `${address(column, first)}:${address(column, first + cells - 1)}`;
  sheet.wide(1, row, width, 'heading', 'Cells, each by itself');
  sheet.acrossTo(width, 1, row + 1, 'header', ['Cell', 'Identification', undefined, 'Without load', 'Under load', 'R output', 'Change', 'Of the box']);
  sheet.acrossTo(width, 1, row + 2, 'header', [undefined, undefined, undefined, outputUnit, outputUnit, 'Ω', outputUnit, 'its change']);
  for (let i = 0; i < cells; i += 1) {
    const at = first + i;
    const [zero, loaded, resistance, change] = [ZERO, LOADED, OHMS, CHANGE].map((column) => address(column, at));
    sheet.put(1, at, 'reference', i + 1).wide(2, at, 2, 'input').put(ZERO, at, 'input', undefined, formats.output).put(LOADED, at, 'input', undefined, formats.output).put(OHMS, at, 'input', undefined, '0.00');
    sheet.put(CHANGE, at, 'result', formula(`IF(OR(${zero}="",${loaded}=""),"",${loaded}-${zero})`), formats.output);
    const part = `IF(COUNT(${ohms})=0,${change}/${cells},${change}/${resistance}/SUMPRODUCT(1/${ohms}))/${boxChange}`;
    sheet.put(SHARE, at, 'result', formula(`IF(OR(${missing.join(',')}),"",IF(${boxChange}=0,"",${part}))`), '0.0%');
  }
  sheet.validate({ range: `${address(ZERO, first)}:${address(LOADED, first + cells - 1)}`, rule: { kind: 'number' }, message: `Expected an output in ${outputUnit}, as a number, or nothing.` });
  sheet.validate({ range: ohms, rule: { kind: 'number', least: 0.001 }, message: 'Expected an output resistance in Ω above 0, lead and trim resistors included; or nothing in all rows if they are equal.' });
  sheet.called('output_unit', address(ZERO, row + 2)).called('typed_zero', range(ZERO)).called('typed_loaded', range(LOADED)).called('output_resistances', ohms);
}

/** What the box was read to give. */
function boxCells({ sheet, width, item, formats }: Desk, row: number): { readonly zero: string; readonly loaded: string; readonly nextRow: number } {
  sheet.wide(1, row, width, 'heading', 'Box, all cells joined');
  ['Box read without load', 'Box read under load'].forEach((label, i) => {
    sheet.put(1, row + 1 + i, 'label', label).put(RESULT.value, row + 1 + i, 'input', undefined, formats.output).put(RESULT.unit, row + 1 + i, 'aside', item.outputUnit);
  });
  const [zero, loaded] = [address(RESULT.value, row + 1), address(RESULT.value, row + 2)];
  sheet.validate({ range: `${zero}:${loaded}`, rule: { kind: 'number' }, message: `Expected an output in ${item.outputUnit}, as a number, or nothing.` });
  sheet.called('box_read_zero', zero).called('box_read_loaded', loaded);
  return { zero, loaded, nextRow: row + 4 };
}
