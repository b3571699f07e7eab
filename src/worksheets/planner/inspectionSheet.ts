import type { SheetPlan } from '../plan';
import type { InspectionTemplate } from '../templateSchema';
import { newDesk } from './desk';
import { closeSheet, openSheet } from './frame';
import { inspectionCheck } from './inspectionCheck';
import { evidenceList } from './inspectionEvidence';
import { lookTable } from './inspectionLooks';
import { RESISTANCES, resistanceTable, zeroCells } from './inspectionReadings';
import { inspectionResults } from './inspectionResults';
import { trimCalculator } from './inspectionTrim';
import type { ItemAnswers } from './itemForm';
import { outcomeLine } from './resultTable';

/** What an inspection sheet is planned from. */
export interface InspectionSetup {
  readonly item: ItemAnswers;
  /** Nominal resistance of the bridge, ohms. */
  readonly resistance: number;
  /** Least insulation resistance, megohms. */
  readonly insulation: number;
  /** Whether readings are in mV/V, so that arms, zero and shunt can be compared. */
  readonly isRatio: boolean;
}

/** Looks, resistances and zero of an item as received, and what they fit. */
export function planInspection(template: InspectionTemplate, { item, resistance, insulation, isRatio }: InspectionSetup): SheetPlan {
  const desk = newDesk(item, 0, []);
  const { nextRow, cell } = openSheet(desk, template, [
    { label: 'Bridge resistance, Ω', name: 'resistance', value: resistance, rule: { kind: 'number', least: 0 } },
  ]);
  const looks = lookTable(desk, nextRow, template);
  const resistances = resistanceTable(desk, looks.nextRow, template, insulation, cell('resistance'));
  const zero = zeroCells(desk, resistances.nextRow, isRatio);
  desk.sheet.called('output_unit', zero.unit);
  const cells = { resistances, zero, resistance: cell('resistance'), ratedOutput: cell('rated_output') };
  const results = inspectionResults(desk, zero.nextRow, template, cells);
  let row = 1 + outcomeLine(desk, results.nextRow + 1, {
    label: 'Outcome of the inspection', name: 'verdict_overall', verdicts: [looks.verdicts, resistances.verdicts, results.verdicts],
    waiting: [`COUNTA(${looks.seen})<${template.looks.length}`, `COUNT(${resistances.measured})<${RESISTANCES}`, `${zero.now}=""`],
  });
  if (isRatio) {
    row = evidenceList(desk, row, cells, results);
    row = trimCalculator(desk, row, cells);
  }
  return closeSheet(desk, inspectionCheck(desk, row, cells, results), template);
}
