import {
  CommandType, DOCS_NORMAL_EDITOR_UNIT_ID_KEY, type DocumentDataModel, ICommandService, type Injector, IResourceLoaderService,
  IUniverInstanceService, type IWorkbookData, LifecycleService, LifecycleStages, type Univer, UniverInstanceType, type Workbook,
} from '@univerjs/core';
import { RichTextEditingMutation } from '@univerjs/docs';
import { SetTriggerFormulaCalculationStartMutation } from '@univerjs/engine-formula';
import { SheetsSelectionsService } from '@univerjs/sheets';
import { FormulaCalculationSessionService } from '@univerjs/sheets-formula';
import { IEditorBridgeService, ScrollToRangeOperation } from '@univerjs/sheets-ui';
import { ILayoutService } from '@univerjs/ui';
import { type CellPlace, rangeOf } from '../address';
import { drawCharts } from './chartLayer';
import { settleEntries } from './entry';
import { guardLocks, type Refusal } from './lock';
import { keepTypingPlain } from './plainTyping';
import { selectRange } from './selectRange';
import { leaveRemovedSheets } from './sheetRemoval';
import { outlastLongPress } from './sheetTabs';
import { createUniver } from './univer';

/** Milliseconds a calculation of the whole workbook may take before it counts as failed. */
const CALCULATION_LIMIT = 120_000;

/** The spreadsheet grid in the page, holding one workbook at a time. */
export interface Grid {
  readonly injector: Injector;
  /** Shows a workbook in place of the one before; nothing is calculated yet. */
  open(data: IWorkbookData): Promise<void>;
  /** Calculates every formula and waits until the results are in the cells. */
  calculate(): Promise<void>;
  workbook(): Workbook;
  /** The workbook as plain data, fit for storing. Spilled cells are not in it. */
  snapshot(): IWorkbookData;
  selectedCell(): (CellPlace & { readonly sheetId: string }) | undefined;
  /** Goes to a cell: its sheet, the selection, and into view. */
  goTo(sheetId: string, address: string): Promise<void>;
  /** Gives the keyboard to the grid. */
  focus(): void;
  /** Told after an edit, a format, or anything else that changes the workbook. */
  onChange(listener: () => void): void;
  /** Told when another cell or sheet is selected. */
  onSelect(listener: () => void): void;
  /** Told what stands in the cell being edited, with every key, and nothing when editing ends. */
  onTyping(listener: (text?: string) => void): void;
  /** Told when new results are in the cells. */
  onCalculated(listener: () => void): void;
  /** Told when a locked sheet refused an edit. */
  onRefused(listener: (refusal: Refusal) => void): void;
}

/** Creates the grid in an element of the page. */
export function createGrid(container: HTMLElement): Grid {
  outlastLongPress(container);
  return new UniverGrid(createUniver(container));
}

class UniverGrid implements Grid {
  readonly injector: Injector;
  private readonly instances: IUniverInstanceService;
  private readonly commands: ICommandService;
  private readonly refusalListeners: ((refusal: Refusal) => void)[] = [];
  private unitId = '';

  constructor(private readonly univer: Univer) {
    this.injector = univer.__getInjector();
    this.instances = this.injector.get(IUniverInstanceService);
    this.commands = this.injector.get(ICommandService);
    // Before the grid's parts start, since what they note of a change before it is made would stay noted.
    guardLocks(this.injector, (refusal) => this.refusalListeners.forEach((listener) => listener(refusal)));
    keepTypingPlain(this.injector);
    settleEntries(this.injector);
    leaveRemovedSheets(this.injector);
  }

  async open(data: IWorkbookData): Promise<void> {
    if (this.unitId) this.instances.disposeUnit(this.unitId);
    this.univer.createUnit<IWorkbookData, Workbook>(UniverInstanceType.UNIVER_SHEET, data);
    this.unitId = data.id;
    this.instances.focusUnit(data.id);
    await this.injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
    drawCharts(this);
  }

  async calculate(): Promise<void> {
    const applied = this.injector.get(FormulaCalculationSessionService).waitForLatestApplied(CALCULATION_LIMIT);
    await this.commands.executeCommand(SetTriggerFormulaCalculationStartMutation.id, { commands: [], forceCalculation: true }, { onlyLocal: true });
    await applied;
  }

  workbook(): Workbook {
    const workbook = this.instances.getUnit<Workbook>(this.unitId, UniverInstanceType.UNIVER_SHEET);
    if (!workbook) throw new Error('no workbook is open');
    return workbook;
  }

  snapshot(): IWorkbookData {
    const data = this.injector.get(IResourceLoaderService).saveUnit<IWorkbookData>(this.unitId);
    if (!data) throw new Error('no workbook is open');
    return data;
  }

  selectedCell(): (CellPlace & { readonly sheetId: string }) | undefined {
    const sheet = this.workbook().getActiveSheet();
    const cell = this.injector.get(SheetsSelectionsService).getCurrentLastSelectionPrimaryCell();
    if (!sheet || !cell) return undefined;
    return { sheetId: sheet.getSheetId(), row: cell.actualRow, column: cell.actualColumn };
  }

  async goTo(sheetId: string, address: string): Promise<void> {
    await selectRange(this.injector, this.workbook(), sheetId, address);
    await this.commands.executeCommand(ScrollToRangeOperation.id, { range: rangeOf(address) });
  }

  focus(): void {
    this.injector.get(ILayoutService).focus();
  }

  onChange(listener: () => void): void {
    this.commands.onCommandExecuted((command) => {
      const params = command.params as { unitId?: string } | undefined;
      if (command.type === CommandType.MUTATION && params?.unitId === this.unitId) listener();
    });
  }

  onSelect(listener: () => void): void {
    this.injector.get(SheetsSelectionsService).selectionChanged$.subscribe(() => listener());
  }

  onTyping(listener: (text?: string) => void): void {
    this.commands.onCommandExecuted((command) => {
      const params = command.params as { unitId?: string } | undefined;
      if (command.id !== RichTextEditingMutation.id || params?.unitId !== DOCS_NORMAL_EDITOR_UNIT_ID_KEY) return;
      const editor = this.instances.getUnit<DocumentDataModel>(DOCS_NORMAL_EDITOR_UNIT_ID_KEY, UniverInstanceType.UNIVER_DOC);
      const { visible } = this.injector.get(IEditorBridgeService).isVisible();
      if (visible) listener(editor?.getBody()?.dataStream.trimEnd() ?? '');
    });
    this.injector.get(IEditorBridgeService).visible$.subscribe(({ visible }) => {
      if (!visible) listener();
    });
  }

  onCalculated(listener: () => void): void {
    this.injector.get(FormulaCalculationSessionService).resultApplied$.subscribe(() => listener());
  }

  onRefused(listener: (refusal: Refusal) => void): void {
    this.refusalListeners.push(listener);
  }
}
