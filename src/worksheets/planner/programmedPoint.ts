import { address, formula } from '../planBuilder';
import type { Desk } from './desk';
import { highlightVerdicts, toleranceVerdict } from './resultTable';

/** Columns: what is stored, what was applied, what the indicator read, the error, its tolerance, the verdict. */
const [STORED, APPLIED, READ, ERROR, TOLERANCE, VERDICT] = [1, 3, 5, 6, 7, 8];

/** What the programmed point is judged by. */
export interface ProgrammedCells {
  readonly ofReading: string;
  readonly ofCapacity: string;
  readonly capacity: string;
  readonly resolution: string;
}

/**
 * Verifies the point that the indicator was programmed with: the output stored for a load, the load applied, what was read,
 * against the same tolerance as the points. It may stay empty. Gives the next free row.
 */
export function programmedPoint({ sheet, width, item, formats }: Desk, row: number, { ofReading, ofCapacity, capacity, resolution }: ProgrammedCells): number {
  const { unit, outputUnit } = item;
  const at = row + 3;
  const cell = (column: number) => address(column, at);
  sheet.wide(1, row, width, 'heading', 'Programmed point');
  sheet.wide(1, row + 1, width, 'note', 'The output stored in the indicator for a load, and what the indicator read when that load was applied. Leave it empty if nothing was programmed.');
  sheet.acrossTo(width, 1, row + 2, 'header', ['Output stored, mV/V', undefined, `Applied, ${unit}`, undefined, `Indicated, ${outputUnit}`, 'Error', 'Tolerance ±', 'Verdict']);
  sheet.put(STORED, at, 'input', undefined, '0.00000').put(APPLIED, at, 'input', undefined, formats.applied).put(READ, at, 'input', undefined, formats.output);
  sheet.put(ERROR, at, 'result', formula(`IF(OR(${cell(APPLIED)}="",${cell(READ)}=""),"",${cell(READ)}-${cell(APPLIED)})`), formats.output);
  sheet.put(TOLERANCE, at, 'input', formula(`IF(${cell(APPLIED)}="","",MAX(${ofReading}*ABS(${cell(APPLIED)}),${ofCapacity}*${capacity}))`), `${formats.output}0`);
  sheet.put(VERDICT, at, 'verdict', formula(toleranceVerdict(cell(ERROR), cell(TOLERANCE), resolution)));
  for (const column of [STORED, APPLIED, READ]) sheet.validate({ range: cell(column), rule: { kind: 'number' }, message: 'Expected a number, or nothing.' });
  highlightVerdicts(sheet, cell(VERDICT));
  sheet.called('programmed_output', cell(STORED)).called('programmed_load', cell(APPLIED)).called('programmed_reading', cell(READ)).called('programmed_verdict', cell(VERDICT));
  return row + 5;
}
