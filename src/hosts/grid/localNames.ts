import { ICommandService, type Injector, IUniverInstanceService, type Nullable, UniverInstanceType, type Workbook } from '@univerjs/core';
import {
  IDefinedNamesService, type IDefinedNamesServiceParam, IDependencyManagerService, IFormulaCurrentConfigService, type IFormulaDataItem, Lexer,
  LexerTreeBuilder, RemoveDefinedNameMutation, SetDefinedNameMutation, SetTriggerFormulaCalculationStartMutation,
} from '@univerjs/engine-formula';
import { RemoveSheetCommand, SCOPE_WORKBOOK_VALUE_DEFINED_NAME, SheetInterceptorService } from '@univerjs/sheets';
import { withRanges } from './nameText';

/**
 * Makes the names of a sheet its own. As it comes, the engine knows which sheet a name belongs to but never asks: of two sheets with
 * a name "forces", one would compute with the other's. So names of sheets become ranges before a formula is read, and only names of
 * the whole workbook are left to the engine. To be called once an engine.
 */
export function mendNames(injector: Injector): void {
  const names = new LocalNames(injector);
  const current = injector.get(IFormulaCurrentConfigService);
  const load = current.load.bind(current);
  current.load = (config) => load({ ...config, formulaData: names.expanded(config.formulaData) });
  leaveOutLocal(injector, names);
  followChanges(injector);
  removeWithSheet(injector);
}

/** A formula with ranges in place of the names of its sheet. */
export function expandNames(injector: Injector, unitId: string, sheetId: string, formula: string): string {
  return new LocalNames(injector).expand(unitId, sheetId, formula);
}

/** The names that belong to a sheet. */
export function namesOf(injector: Injector, unitId: string, sheetId: string): IDefinedNamesServiceParam[] {
  return Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {}).filter((name) => name.localSheetId === sheetId);
}

type FormulaData = ReturnType<IFormulaCurrentConfigService['getFormulaData']>;
type Rows<Cell> = { readonly [row: number]: { readonly [column: number]: Cell } };

class LocalNames {
  constructor(private readonly injector: Injector) {}

  /** The formulas of all workbooks, those with names of sheets spelt out. Nothing is copied where there are no names. */
  expanded(data: FormulaData): FormulaData {
    const units = Object.entries(data).map(([unitId, sheets]) => {
      if (!sheets || !this.hasLocal(unitId)) return [unitId, sheets];
      return [unitId, Object.fromEntries(Object.entries(sheets).map(([sheetId, rows]) => [sheetId, rows && this.expandRows(unitId, sheetId, rows as Rows<IFormulaDataItem>)]))];
    });
    return Object.fromEntries(units) as FormulaData;
  }

  expand(unitId: string, sheetId: string, formula: string): string {
    return this.hasLocal(unitId) ? this.expandWith(this.tables(unitId), unitId, sheetId, formula) : formula;
  }

  /** The name of the whole workbook; names are the same in small and large letters. */
  global(unitId: string, name: string): IDefinedNamesServiceParam | null {
    return this.all(unitId).find((known) => !isLocal(known) && known.name.toLowerCase() === name.toLowerCase()) ?? null;
  }

  private expandRows(unitId: string, sheetId: string, rows: Rows<IFormulaDataItem>): Rows<IFormulaDataItem> {
    const tables = this.tables(unitId);
    return mapped(rows, (columns) => mapped(columns, (cell) => {
      const f = cell?.f && this.expandWith(tables, unitId, sheetId, cell.f);
      return f === cell?.f ? cell : { ...cell, f };
    }));
  }

  private expandWith(tables: Tables, unitId: string, sheetId: string, formula: string): string {
    return withRanges(formula, (name, sheet) => {
      const owner = sheet === undefined ? sheetId : this.workbook(unitId)?.getSheetBySheetName(sheet)?.getSheetId();
      return owner === undefined ? undefined : tables.get(owner)?.get(name.toLowerCase());
    });
  }

  /** What each name of each sheet stands for. */
  private tables(unitId: string): Tables {
    const tables: Tables = new Map();
    for (const known of this.all(unitId).filter(isLocal)) {
      const table = tables.get(known.localSheetId!) ?? new Map<string, string>();
      table.set(known.name.toLowerCase(), known.formulaOrRefString.replace(/^=/, ''));
      tables.set(known.localSheetId!, table);
    }
    return tables;
  }

  private hasLocal(unitId: string): boolean {
    return this.all(unitId).some(isLocal);
  }

  private all(unitId: string): IDefinedNamesServiceParam[] {
    return Object.values(this.injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {});
  }

  private workbook(unitId: string): Nullable<Workbook> {
    return this.injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  }
}

type Tables = Map<string, Map<string, string>>;

function mapped<Value, Result>(matrix: { readonly [key: number]: Value }, change: (value: Value) => Result): { [key: number]: Result } {
  return Object.fromEntries(Object.entries(matrix).map(([key, value]) => [key, value && change(value)])) as { [key: number]: Result };
}

function isLocal({ localSheetId }: IDefinedNamesServiceParam): boolean {
  return localSheetId !== undefined && localSheetId !== SCOPE_WORKBOOK_VALUE_DEFINED_NAME;
}

/** A name of another sheet means nothing here, so the engine must not find it. */
function leaveOutLocal(injector: Injector, names: LocalNames): void {
  const lexer = injector.get(Lexer);
  const builder = injector.get(LexerTreeBuilder);
  const current = injector.get(IFormulaCurrentConfigService);
  lexer.treeBuilder = (formula, transformSuffix = true) => builder.treeBuilder(formula, transformSuffix, {
    unitId: current.getExecuteUnitId(),
    getValueByName: (unitId, name) => names.global(unitId, name),
    getDirtyDefinedNameMap: () => current.getDirtyDefinedNameMap(),
    getSheetName: (unitId, sheetId) => current.getSheetName(unitId, sheetId),
  });
}

/** What a name stands for is read once a formula: when it changes, all are read anew. Names come before their sheet does, and go after it. */
function followChanges(injector: Injector): void {
  const commands = injector.get(ICommandService);
  commands.onCommandExecuted((command) => {
    if (command.id !== SetDefinedNameMutation.id && command.id !== RemoveDefinedNameMutation.id) return;
    const { unitId, localSheetId } = command.params as IDefinedNamesServiceParam & { unitId: string };
    const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    if (!localSheetId || !workbook?.getSheetBySheetId(localSheetId)) return;
    injector.get(IDependencyManagerService).clearFormulaDependency(unitId);
    void commands.executeCommand(SetTriggerFormulaCalculationStartMutation.id, { commands: [], forceCalculation: true }, { onlyLocal: true });
  });
}

/** A sheet takes its names along when it is deleted, and brings them back with undo. */
function removeWithSheet(injector: Injector): void {
  injector.get(SheetInterceptorService).interceptCommand({
    // After the grid has turned them into #REF!.
    priority: -1,
    getMutations: ({ id, params }) => {
      if (id !== RemoveSheetCommand.id) return { redos: [], undos: [] };
      const { unitId, subUnitId } = params as { unitId: string; subUnitId: string };
      const gone = namesOf(injector, unitId, subUnitId).map((name) => ({ unitId, ...name }));
      return {
        redos: gone.map((name) => ({ id: RemoveDefinedNameMutation.id, params: name })),
        undos: gone.map((name) => ({ id: SetDefinedNameMutation.id, params: name })),
      };
    },
  });
}
