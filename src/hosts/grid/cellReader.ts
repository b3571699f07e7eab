import type { CellValue, Injector, IRange, Workbook, Worksheet } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import { type CellPlace, isInside } from '../address';
import { fromCellData } from './cellData';

/** A formula and the cell it stands in. */
export interface FormulaFound extends CellPlace {
  readonly formula: string;
}

/** A workbook that is open in an engine, with or without a page. */
export interface OpenWorkbook {
  readonly injector: Injector;
  workbook(): Workbook;
}

/** Reads what the grid's cells hold, spilled ones included. */
export class CellReader {
  private readonly formulas: FormulaDataModel;

  constructor(private readonly grid: OpenWorkbook) {
    this.formulas = grid.injector.get(FormulaDataModel);
  }

  get unitId(): string {
    return this.grid.workbook().getUnitId();
  }

  sheet(sheetId: string): Worksheet | undefined {
    return this.grid.workbook().getSheetBySheetId(sheetId) ?? undefined;
  }

  sheetNamed(name: string): Worksheet | undefined {
    return this.grid.workbook().getSheetBySheetName(name) ?? undefined;
  }

  /** The value as calculated, unrounded; undefined if the cell is blank. */
  valueAt(sheetId: string, { row, column }: CellPlace): CellValue | undefined {
    const spilled = this.formulas.getArrayFormulaCellData()[this.unitId]?.[sheetId]?.[row]?.[column];
    const own = this.sheet(sheetId)?.getCellMatrix().getValue(row, column);
    return fromCellData(spilled) ?? fromCellData(own) ?? undefined;
  }

  /** The formula that gives this cell its value: its own, or that of the cell it is spilled from. */
  formulaAt(sheetId: string, place: CellPlace): FormulaFound | undefined {
    const source = this.ownFormula(sheetId, place) ? place : this.spillSource(sheetId, place);
    const formula = source && this.ownFormula(sheetId, source);
    return formula ? { row: source.row, column: source.column, formula } : undefined;
  }

  /** The formula that was typed into this very cell. */
  ownFormula(sheetId: string, { row, column }: CellPlace): string | undefined {
    return this.formulas.getFormulaStringByCell(row, column, sheetId, this.unitId) ?? undefined;
  }

  /** The cell whose formula spills into this one, or is this one. */
  spillSource(sheetId: string, place: CellPlace): CellPlace | undefined {
    const blocks = this.formulas.getArrayFormulaRange()[this.unitId]?.[sheetId] ?? {};
    for (const [row, columns] of Object.entries(blocks)) {
      for (const [column, range] of Object.entries(columns ?? {})) {
        if (isInside(place, range as IRange)) return { row: Number(row), column: Number(column) };
      }
    }
    return undefined;
  }
}
