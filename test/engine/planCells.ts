import type { SheetPlan } from '../../src/worksheets/plan';
import type { EngineSheet } from './bundle';

type EngineCell = EngineSheet['cells'][number][number];

/** A plan's cells as the matrix that the engine takes. */
export function cellsOf(plan: SheetPlan): EngineCell[][] {
  const matrix: EngineCell[][] = [];
  for (const { at, value, formula } of plan.cells) {
    const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(at) as RegExpExecArray;
    const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
    const row = Number(digits) - 1;
    while (matrix.length <= row) matrix.push([]);
    while (matrix[row].length <= column) matrix[row].push(null);
    matrix[row][column] = formula === undefined ? value ?? null : { formula };
  }
  return matrix;
}
