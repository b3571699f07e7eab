import type { SheetPlan } from '../../worksheets/plan';
import { placeOf } from '../address';
import type { EngineCell } from '../grid/cellData';
import type { EngineSheet } from '../grid/engine';

/** Plans as the sheets that the formula engine computes. */
export function engineSheets(plans: readonly SheetPlan[]): EngineSheet[] {
  return plans.map((plan) => ({ name: plan.name, cells: matrix(plan), names: plan.names }));
}

function matrix(plan: SheetPlan): EngineCell[][] {
  const rows: EngineCell[][] = [];
  for (const { at, value, formula } of plan.cells) {
    const { row, column } = placeOf(at);
    while (rows.length <= row) rows.push([]);
    while (rows[row].length <= column) rows[row].push(null);
    rows[row][column] = formula === undefined ? value ?? null : { formula };
  }
  return rows;
}
