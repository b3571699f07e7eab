import type { CellValue, IRange, Workbook, Worksheet } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import { fromCellData, isErrorCode } from './cellData';
import { addressOf, type CellPlace, isInside, rangeOf } from './address';
import { referencesIn } from './formulaReferences';
import type { Grid } from './createGrid';
import { messageAt } from './messages';
import { errorMessage, nameMessage } from './nativeErrors';

/** A formula and the cell it stands in. */
export interface FormulaFound extends CellPlace {
  readonly formula: string;
}

/** An error in a cell, and where it comes from. */
export interface ErrorFound {
  /** The sheet and cell that hold the formula which failed first; the cell itself unless it passes an error on. */
  readonly sheetId: string;
  readonly sheetName: string;
  readonly address: string;
  readonly code: string;
  /** Why, in words. */
  readonly message: string;
  /** True if the words are about this very input, not about the code in general. */
  readonly worded: boolean;
}

/** How many cells back an error is followed to where it began. */
const DEEPEST = 30;

/** Reads what the grid's cells hold, spilled ones included. */
export class CellReader {
  private readonly formulas: FormulaDataModel;

  constructor(private readonly grid: Grid) {
    this.formulas = grid.injector.get(FormulaDataModel);
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

  /** The error a cell holds, followed back to the cell it began in; undefined if it holds none. */
  errorAt(sheetId: string, place: CellPlace, depth = 0): ErrorFound | undefined {
    const code = this.codeAt(sheetId, place);
    const sheet = this.sheet(sheetId);
    if (code === undefined || !sheet) return undefined;
    const found = this.formulaAt(sheetId, place);
    const source = found ?? place;
    const message = messageAt(this.unitId, sheetId, source.row, source.column) ?? this.unknownName(code, found);
    const origin = message === undefined && found && depth < DEEPEST ? this.originOf(sheet, found, code, depth) : undefined;
    return origin ?? {
      sheetId, sheetName: sheet.getName(), address: addressOf(source), code,
      message: message ?? errorMessage(code), worded: message !== undefined,
    };
  }

  /** What makes cells of a sheet hold errors: each cause once, those with words first, else row by row. */
  errorsOn(sheetId: string): ErrorFound[] {
    const found = new Map<string, ErrorFound>();
    this.sheet(sheetId)?.getCellMatrix().forValue((row, column) => {
      const error = this.errorAt(sheetId, { row, column });
      if (error) found.set(`${error.sheetId} ${error.address}`, error);
    });
    const all = [...found.values()];
    return [...all.filter(({ worded }) => worded), ...all.filter(({ worded }) => !worded)];
  }

  private get workbook(): Workbook {
    return this.grid.workbook();
  }

  private get unitId(): string {
    return this.workbook.getUnitId();
  }

  private sheet(sheetId: string): Worksheet | undefined {
    return this.workbook.getSheetBySheetId(sheetId) ?? undefined;
  }

  private codeAt(sheetId: string, place: CellPlace): string | undefined {
    const value = this.valueAt(sheetId, place);
    return isErrorCode(value) && this.formulaAt(sheetId, place) ? value : undefined;
  }

  private unknownName(code: string, found?: FormulaFound): string | undefined {
    return code === '#NAME?' && found ? nameMessage(this.grid.injector, found.formula) : undefined;
  }

  private ownFormula(sheetId: string, { row, column }: CellPlace): string | undefined {
    return this.formulas.getFormulaStringByCell(row, column, sheetId, this.unitId) ?? undefined;
  }

  private spillSource(sheetId: string, place: CellPlace): CellPlace | undefined {
    const blocks = this.formulas.getArrayFormulaRange()[this.unitId]?.[sheetId] ?? {};
    for (const [row, columns] of Object.entries(blocks)) {
      for (const [column, range] of Object.entries(columns ?? {})) {
        if (isInside(place, range as IRange)) return { row: Number(row), column: Number(column) };
      }
    }
    return undefined;
  }

  /** The first cell a formula refers to that holds the same error, followed on from there. */
  private originOf(sheet: Worksheet, source: FormulaFound, code: string, depth: number): ErrorFound | undefined {
    for (const reference of referencesIn(source.formula)) {
      const target = reference.sheet === undefined ? sheet : this.workbook.getSheetBySheetName(reference.sheet);
      const place = target && this.firstWithCode(target.getSheetId(), rangeOf(reference.range), code);
      if (target && place) return this.errorAt(target.getSheetId(), place, depth + 1);
    }
    return undefined;
  }

  private firstWithCode(sheetId: string, range: IRange, code: string): CellPlace | undefined {
    for (let row = range.startRow; row <= range.endRow; row += 1) {
      for (let column = range.startColumn; column <= range.endColumn; column += 1) {
        if (this.codeAt(sheetId, { row, column }) === code) return { row, column };
      }
    }
    return undefined;
  }
}
