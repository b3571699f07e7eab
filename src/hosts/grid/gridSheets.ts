import { BooleanNumber, CommandType, generateRandomId, ICommandService, type Worksheet } from '@univerjs/core';
import { RemoveSheetCommand, SetWorksheetActiveOperation } from '@univerjs/sheets';
import { FormulaCalculationSessionService } from '@univerjs/sheets-formula';
import type { Entry, SheetPlan } from '../../worksheets/plan';
import type { FileSheet, WriteFile } from '../file/writeWorkbook';
import { type SheetContent, type SheetEntry, type SheetHost, SheetTaken } from '../sheetHost';
import type { OpenWorkbook } from './cellReader';
import { filling } from './fillSheet';
import { planOf } from './planOf';
import { isEmpty, readSheet, valuesOf } from './readSheet';
import { insertion, replacement, Steps } from './writeSheet';

/** Milliseconds that computing a new sheet may take before it counts as failed. */
const CALCULATION_LIMIT = 120_000;

/** What the sheets need of the grid, with or without a page. */
export interface SheetsGrid extends OpenWorkbook {
  /** Goes to a cell or range: its sheet, the selection, and into view. */
  goTo(sheetId: string, address: string): Promise<void>;
}

/** The sheets of the workbook that is open in a grid. */
export class GridSheets implements SheetHost {
  private readonly commands: ICommandService;

  /** `writeFile` makes the bytes of a file; it is handed in, since a page loads it only when it is needed. */
  constructor(private readonly grid: SheetsGrid, private readonly writeFile?: WriteFile) {
    this.commands = grid.injector.get(ICommandService);
  }

  async sheets(): Promise<readonly SheetEntry[]> {
    return this.grid.workbook().getSheets().map((sheet) => ({ name: sheet.getName(), empty: isEmpty(sheet) }));
  }

  async write(plan: SheetPlan, { replace = false }: { readonly replace?: boolean } = {}): Promise<void> {
    const old = this.find(plan.name);
    if (old && !replace && !isEmpty(old)) throw new SheetTaken(old.getName());
    try {
      await this.bringIn(plan, old);
    } catch (error) {
      throw new Error(`The sheet “${plan.name}” could not be written, and the workbook is as it was: ${reason(error)}`, { cause: error });
    }
  }

  async read(sheet: string): Promise<SheetContent> {
    return readSheet(this.grid, this.known(sheet));
  }

  async remove(sheet: string): Promise<void> {
    const workbook = this.grid.workbook();
    const found = this.known(sheet);
    if (workbook.getSheetSize() === 1) throw new Error(`“${sheet}” is the only sheet; a workbook needs one.`);
    await this.commands.executeCommand(RemoveSheetCommand.id, { unitId: workbook.getUnitId(), subUnitId: found.getSheetId() });
  }

  async fill(sheet: string, entries: readonly Entry[]): Promise<void> {
    const found = this.known(sheet);
    const steps = new Steps(this.grid.injector, [filling(this.grid, found, entries)]);
    if (entries.length === 0) return;
    try {
      await this.whileCalculating(() => steps.take());
    } catch (error) {
      steps.takeBack();
      throw new Error(`The sheet “${found.getName()}” could not be filled, and is as it was: ${reason(error)}`, { cause: error });
    }
    steps.noteForUndo(this.grid.workbook().getUnitId());
  }

  async save(): Promise<Uint8Array> {
    if (!this.writeFile) throw new Error('This workbook cannot be saved as a file: nothing here writes one.');
    // What was typed last may still be on its way to the cells that read it.
    await this.whileCalculating(() => undefined);
    try {
      return await this.writeFile(this.fileSheets());
    } catch (error) {
      throw new Error(`The workbook could not be saved as a file: ${reason(error)}`, { cause: error });
    }
  }

  private fileSheets(): FileSheet[] {
    const workbook = this.grid.workbook();
    const active = workbook.getActiveSheet();
    return workbook.getSheets().map((sheet) => ({
      plan: planOf(this.grid, sheet),
      values: valuesOf(this.grid, sheet),
      shown: sheet === active,
      hidden: sheet.isSheetHidden() === BooleanNumber.TRUE,
    }));
  }

  async select(sheet: string, address: string): Promise<void> {
    await this.grid.goTo(this.known(sheet).getSheetId(), address);
  }

  async active(): Promise<string> {
    return this.grid.workbook().getActiveSheet().getName();
  }

  onChange(listener: () => void): void {
    this.commands.onCommandExecuted((command) => {
      const params = command.params as { unitId?: string } | undefined;
      const changes = command.type === CommandType.MUTATION || command.id === SetWorksheetActiveOperation.id;
      if (changes && params?.unitId === this.grid.workbook().getUnitId()) listener();
    });
    this.grid.injector.get(FormulaCalculationSessionService).resultApplied$.subscribe(() => listener());
  }

  /** Writes a plan as the last sheet, in the place of another if there is one. If that fails, everything is taken back. */
  private async bringIn(plan: SheetPlan, old: Worksheet | undefined): Promise<void> {
    const { injector } = this.grid;
    const workbook = this.grid.workbook();
    const sheetId = `sheet-${generateRandomId(8)}`;
    const steps = new Steps(injector, old ? replacement(injector, workbook, plan, sheetId, old) : insertion(workbook, plan, sheetId));
    const shown = workbook.getActiveSheet().getSheetId();
    try {
      await this.whileCalculating(() => steps.take());
      await this.grid.goTo(sheetId, 'A1');
    } catch (error) {
      if (workbook.getSheetBySheetId(sheetId)) steps.takeBack();
      await this.show(shown);
      throw error;
    }
    steps.noteForUndo(workbook.getUnitId());
  }

  private async whileCalculating(change: () => void): Promise<void> {
    const applied = this.grid.injector.get(FormulaCalculationSessionService).waitForLatestApplied(CALCULATION_LIMIT);
    try {
      change();
    } catch (error) {
      applied.catch(() => undefined);
      throw error;
    }
    await applied;
  }

  private async show(sheetId: string): Promise<void> {
    if (this.grid.workbook().getActiveSheet().getSheetId() === sheetId) return;
    await this.commands.executeCommand(SetWorksheetActiveOperation.id, { unitId: this.grid.workbook().getUnitId(), subUnitId: sheetId });
  }

  /** Names of sheets are the same in small and large letters. */
  private find(name: string): Worksheet | undefined {
    return this.grid.workbook().getSheets().find((sheet) => sheet.getName().toLowerCase() === name.toLowerCase());
  }

  private known(name: string): Worksheet {
    const sheet = this.find(name);
    if (!sheet) throw new Error(`There is no sheet “${name}”.`);
    return sheet;
  }
}

function reason(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
