import { address } from '../../../src/worksheets/planBuilder';
import type { SheetPlan } from '../../../src/worksheets/plan';
import type { ReadCell, ReadSheet, ReadValue } from '../../../src/worksheets/readSheet';
import { areaOf } from '../../../src/worksheets/area';

/** A planned sheet as it is read back; what its formulas give is made up from their addresses, also what they spill over. */
export function asRead(plan: SheetPlan): ReadSheet {
  const cells = new Map<string, ReadCell>();
  for (const { at, value, formula, spill } of plan.cells) {
    const start = areaOf(at)!;
    for (let i = 0; formula !== undefined && i < (spill?.rows ?? 1); i += 1) {
      for (let j = 0; j < (spill?.columns ?? 1); j += 1) cells.set(address(start.left + j, start.top + i), { at: address(start.left + j, start.top + i), value: made(start.left + j, start.top + i) });
    }
    if (formula !== undefined) cells.set(at, { at, value: made(start.left, start.top), formula });
    else if (value !== undefined && value !== '') cells.set(at, { at, value });
  }
  return { name: plan.name, cells: [...cells.values()], names: plan.names ?? [] };
}

function made(column: number, row: number): number {
  return Math.sin(100 * row + column) / 3;
}

/** The same sheet with a cell that holds something else; null clears it. */
export function withCell(sheet: ReadSheet, at: string, value: ReadValue, formula?: string): ReadSheet {
  const others = sheet.cells.filter((cell) => cell.at !== at);
  return { ...sheet, cells: value === null && formula === undefined ? others : [...others, { at, value, ...(formula === undefined ? {} : { formula }) }] };
}

/** A copy whose cell functions became their values, as it leaves the laboratory. */
export function frozen(sheet: ReadSheet): ReadSheet {
  return { ...sheet, cells: sheet.cells.map(({ formula, ...cell }) => (formula === undefined || /PROVE\./.test(formula) ? cell : { ...cell, formula })) };
}
