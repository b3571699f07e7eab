import {
  ICommandService, type ICellData, type Injector, type IObjectMatrixPrimitiveType, IUniverInstanceService, type IWorkbookData, LocaleType, LogLevel, Univer,
  UniverInstanceType, type Workbook, type Worksheet,
} from '@univerjs/core';
import { UniverDataValidationPlugin } from '@univerjs/data-validation';
import { FormulaDataModel, SetTriggerFormulaCalculationStartMutation, UniverFormulaEnginePlugin } from '@univerjs/engine-formula';
import { SetRangeValuesMutation, UniverSheetsPlugin } from '@univerjs/sheets';
import { UniverSheetsConditionalFormattingPlugin } from '@univerjs/sheets-conditional-formatting';
import { UniverSheetsDataValidationPlugin } from '@univerjs/sheets-data-validation';
import { CalculationMode, FormulaCalculationSessionService, UniverSheetsFormulaPlugin } from '@univerjs/sheets-formula';
import type { PlanName, SheetPlan } from '../../worksheets/plan';
import { placeOf, rangeOf } from '../address';
import type { WriteFile } from '../file/writeWorkbook';
import type { SheetHost } from '../sheetHost';
import { CellError, type EngineCell, fromCellData, isErrorCode, toCellData } from './cellData';
import { GridSheets } from './gridSheets';
import { interpret } from './interpret';
import type { CellMessages } from './messages';
import { errorMessage } from './nativeErrors';
import { planOf } from './planOf';
import { registerCellFunctions } from './registerFunctions';
import { selectRange } from './selectRange';
import { definedNames, NAMES } from './sheetNames';

/** Milliseconds a calculation may take before it counts as failed. */
const CALCULATION_LIMIT = 120_000;

/** Free rows and columns beyond what a sheet holds, for results that spill. */
const SPARE_ROWS = 1000;
const SPARE_COLUMNS = 50;

/** A sheet to compute: its cells row by row from A1, and its size if the spare rows and columns do not do. */
export interface EngineSheet {
  readonly name: string;
  readonly cells: readonly (readonly EngineCell[])[];
  readonly rows?: number;
  readonly columns?: number;
  /** Names of this sheet alone. */
  readonly names?: readonly PlanName[];
}

/** What a cell of the engine holds: null if blank. */
export type EngineValue = number | string | boolean | null | CellError;

let engines = 0;

/** A workbook with the page's formula engine and cell functions, without a page. Dispose of it after use. */
export class Engine {
  readonly injector: Injector;
  readonly messages: CellMessages;
  readonly unitId: string;
  private readonly univer: Univer;
  readonly workbook: Workbook;

  constructor(sheets: readonly EngineSheet[]) {
    this.univer = new Univer({ locale: LocaleType.EN_US, locales: { [LocaleType.EN_US]: {} }, logLevel: LogLevel.ERROR });
    this.univer.registerPlugin(UniverFormulaEnginePlugin);
    this.univer.registerPlugin(UniverSheetsPlugin);
    this.univer.registerPlugin(UniverSheetsFormulaPlugin, { initialFormulaComputing: CalculationMode.NO_CALCULATION });
    this.univer.registerPlugin(UniverDataValidationPlugin);
    this.univer.registerPlugin(UniverSheetsDataValidationPlugin);
    this.univer.registerPlugin(UniverSheetsConditionalFormattingPlugin);
    engines += 1;
    // Formulas once read are kept for the whole process by the id of the workbook, so no two may share one.
    this.unitId = `engine-${engines}`;
    this.workbook = this.univer.createUnit<IWorkbookData, Workbook>(UniverInstanceType.UNIVER_SHEET, workbookData(this.unitId, sheets));
    this.injector = this.univer.__getInjector();
    // Undo takes back the last step of the workbook that has the focus.
    this.injector.get(IUniverInstanceService).focusUnit(this.unitId);
    this.messages = registerCellFunctions(this.injector);
  }

  /** Computes every formula. */
  async calculate(): Promise<void> {
    await this.whileCalculating(() =>
      this.execute(SetTriggerFormulaCalculationStartMutation.id, { commands: [], forceCalculation: true }));
  }

  /** Puts a value or a formula into a cell (null clears it) and computes what depends on it. */
  async set(sheet: string, address: string, cell: EngineCell): Promise<void> {
    const { row, column } = placeOf(address);
    const data = { v: null, t: null, f: null, si: null, p: null, ...toCellData(cell) };
    await this.whileCalculating(() => this.execute(SetRangeValuesMutation.id, {
      unitId: this.unitId,
      subUnitId: this.sheet(sheet).getSheetId(),
      cellValue: { [row]: { [column]: data } },
    }));
  }

  /** Runs a command of the engine, like the insertion of a row, and computes what depends on it. */
  async command(id: string, params: object): Promise<void> {
    await this.whileCalculating(() => this.execute(id, params));
  }

  /** What a cell holds, unrounded, spilled cells included. */
  value(sheet: string, address: string): EngineValue {
    return this.values(sheet, address)[0][0];
  }

  /** What the cells of a range hold, row by row. */
  values(sheet: string, range: string): EngineValue[][] {
    const { startRow, endRow, startColumn, endColumn } = rangeOf(range);
    return Array.from({ length: endRow - startRow + 1 }, (_, down) =>
      Array.from({ length: endColumn - startColumn + 1 }, (_unused, across) => this.valueAt(this.sheet(sheet), startRow + down, startColumn + across)));
  }

  /** Computes a formula as if it stood on a sheet, without putting it into a cell: it can neither be blocked nor be seen by others. */
  evaluate(sheet: string, formula: string): Promise<EngineValue | EngineValue[][]> {
    return interpret(this.injector, { unitId: this.unitId, sheet: this.sheet(sheet), formula });
  }

  /** The workbook as a host that plans are written to and read from; `writeFile` makes its file. */
  sheetsHost(writeFile?: WriteFile): SheetHost {
    const { injector, workbook } = this;
    const goTo = (sheetId: string, address: string): Promise<void> => selectRange(injector, workbook, sheetId, address);
    return new GridSheets({ injector, workbook: () => workbook, goTo }, writeFile);
  }

  /** A sheet as a plan, as it stands now. */
  planOf(name: string): SheetPlan {
    return planOf({ injector: this.injector, workbook: () => this.workbook }, this.sheet(name));
  }

  sheet(name: string): Worksheet {
    const sheet = this.workbook.getSheetBySheetName(name);
    if (!sheet) throw new Error(`there is no sheet "${name}"`);
    return sheet;
  }

  dispose(): void {
    this.messages.dispose();
    this.univer.dispose();
  }

  private async whileCalculating(change: () => Promise<unknown>): Promise<void> {
    const applied = this.injector.get(FormulaCalculationSessionService).waitForLatestApplied(CALCULATION_LIMIT);
    await change();
    await applied;
  }

  private execute(id: string, params: object): Promise<unknown> {
    return this.injector.get(ICommandService).executeCommand(id, params);
  }

  private valueAt(sheet: Worksheet, row: number, column: number): EngineValue {
    const sheetId = sheet.getSheetId();
    const spilled = this.injector.get(FormulaDataModel).getArrayFormulaCellData()[this.unitId]?.[sheetId]?.[row]?.[column];
    const value = fromCellData(spilled ?? sheet.getCellMatrix().getValue(row, column));
    if (!isErrorCode(value)) return value;
    const message = this.messages.messageAt({ unitId: this.unitId, sheetId, row, column });
    return new CellError(value, message ?? errorMessage(value));
  }
}

function workbookData(id: string, sheets: readonly EngineSheet[]): IWorkbookData {
  const entries = sheets.map(({ name, cells, rows, columns }, index) => {
    const widest = cells.reduce((width, row) => Math.max(width, row.length), 0);
    return [`sheet-${index + 1}`, {
      id: `sheet-${index + 1}`,
      name,
      rowCount: rows ?? cells.length + SPARE_ROWS,
      columnCount: columns ?? widest + SPARE_COLUMNS,
      cellData: cellMatrix(cells),
    }] as const;
  });
  const names = sheets.flatMap((sheet, index) => definedNames(sheet, entries[index][0]));
  return {
    id, name: id, appVersion: '', locale: LocaleType.EN_US, styles: {},
    sheetOrder: entries.map(([sheetId]) => sheetId),
    sheets: Object.fromEntries(entries),
    resources: [{ name: NAMES, data: JSON.stringify(Object.fromEntries(names.map((name) => [name.id, name]))) }],
  };
}

function cellMatrix(cells: readonly (readonly EngineCell[])[]): IObjectMatrixPrimitiveType<ICellData> {
  const matrix: IObjectMatrixPrimitiveType<ICellData> = {};
  cells.forEach((row, rowIndex) => row.forEach((cell, columnIndex) => {
    const data = toCellData(cell);
    if (data) (matrix[rowIndex] ??= {})[columnIndex] = data;
  }));
  return matrix;
}
