import type { IRange } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import type { Grid } from './createGrid';

/** Milliseconds after a change before the spills are compared: by then the engine has taken note of it. */
const QUIET = 150;

/**
 * Calculates everything anew when a spilled block gets smaller or goes away. The engine leaves the formulas that read its
 * former cells as they were, so an old result would stand beside the error that made the block vanish.
 */
export function watchSpills(grid: Grid): void {
  let workbook = grid.workbook();
  let before = spills(grid);
  let timer: number | undefined;
  const compare = (): void => {
    const now = spills(grid);
    const shrunk = [...before].some(([place, range]) => !covers(now.get(place), range));
    const isSame = grid.workbook() === workbook;
    workbook = grid.workbook();
    before = now;
    if (shrunk && isSame) void grid.calculate();
  };
  const soon = (): void => {
    clearTimeout(timer);
    timer = window.setTimeout(compare, QUIET);
  };
  grid.onChange(soon);
  grid.onCalculated(compare);
}

/** Every spilled block of the workbook by the cell it comes from. */
function spills(grid: Grid): Map<string, IRange> {
  const found = new Map<string, IRange>();
  const unitId = grid.workbook().getUnitId();
  const sheets = grid.injector.get(FormulaDataModel).getArrayFormulaRange()[unitId] ?? {};
  for (const [sheetId, rows] of Object.entries(sheets)) {
    for (const [row, columns] of Object.entries(rows ?? {})) {
      for (const [column, range] of Object.entries(columns ?? {})) {
        if (range) found.set([sheetId, row, column].join(' '), { ...(range as IRange) });
      }
    }
  }
  return found;
}

function covers(outer: IRange | undefined, inner: IRange): boolean {
  return outer !== undefined
    && outer.startRow <= inner.startRow && outer.startColumn <= inner.startColumn
    && outer.endRow >= inner.endRow && outer.endColumn >= inner.endColumn;
}
