import type { CellValue } from '@univerjs/core';
import { placeOf } from '../hosts/address';
import type { CellReader } from '../hosts/grid/cellReader';
import type { Grid } from '../hosts/grid/createGrid';
import type { SheetHost } from '../hosts/sheetHost';

/** Access for tests and the console: reading, and the sheets as the pane has them. */
export interface Probe {
  /** The unrounded value of a cell, by its sheet's name and its address. */
  valueAt(sheet: string, address: string): CellValue | undefined;
  /** The formula that gives a cell its value, its own or that of the cell it is spilled from. */
  formulaAt(sheet: string, address: string): string | undefined;
  /** Names of the sheets, in order. */
  sheets(): string[];
  /** What writes plans and reads sheets back. */
  readonly host: SheetHost;
}

declare global {
  interface Window {
    provingsheet?: Probe;
  }
}

export function exposeProbe(grid: Grid, cells: CellReader, host: SheetHost): void {
  const idOf = (sheet: string): string => {
    const found = grid.workbook().getSheetBySheetName(sheet);
    if (!found) throw new Error(`there is no sheet "${sheet}"`);
    return found.getSheetId();
  };
  window.provingsheet = Object.freeze({
    valueAt: (sheet: string, address: string) => cells.valueAt(idOf(sheet), placeOf(address)),
    formulaAt: (sheet: string, address: string) => cells.formulaAt(idOf(sheet), placeOf(address))?.formula,
    sheets: () => grid.workbook().getSheets().map((sheet) => sheet.getName()),
    host,
  });
}
