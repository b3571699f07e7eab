import type { CellValue } from '@univerjs/core';
import { placeOf } from '../hosts/grid/address';
import type { CellReader } from '../hosts/grid/cellReader';
import type { Grid } from '../hosts/grid/createGrid';

/** Reading access for tests and the console; it changes nothing. */
export interface Probe {
  /** The unrounded value of a cell, by its sheet's name and its address. */
  valueAt(sheet: string, address: string): CellValue | undefined;
  /** Names of the sheets, in order. */
  sheets(): string[];
}

declare global {
  interface Window {
    provingsheet?: Probe;
  }
}

export function exposeProbe(grid: Grid, cells: CellReader): void {
  window.provingsheet = Object.freeze({
    valueAt: (sheet: string, address: string) => {
      const found = grid.workbook().getSheetBySheetName(sheet);
      return found ? cells.valueAt(found.getSheetId(), placeOf(address)) : undefined;
    },
    sheets: () => grid.workbook().getSheets().map((sheet) => sheet.getName()),
  });
}
