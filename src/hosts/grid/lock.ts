import {
  CustomCommandExecutionError, type ICommandInfo, ICommandService, type IExecutionOptions, type Injector, IUndoRedoService, IUniverInstanceService,
  type IObjectMatrixPrimitiveType, UniverInstanceType, type Workbook, type Worksheet,
} from '@univerjs/core';
import {
  AddWorksheetMergeMutation, InsertColMutation, InsertRowMutation, MoveColsMutation, MoveRangeMutation, MoveRowsMutation, RemoveColMutation,
  RemoveRowMutation, RemoveWorksheetMergeMutation, ReorderRangeMutation, SetRangeValuesMutation,
} from '@univerjs/sheets';
import { IEditorBridgeService, SetCellEditVisibleOperation } from '@univerjs/sheets-ui';
import { addressOf, type CellPlace } from '../address';
import { lockedSheet, type LockedSheet } from './lockedSheet';
import { SetExtrasMutation } from './setExtras';
import { readExtras, type SheetExtras } from './sheetExtras';

/** An edit that a locked sheet refused. */
export interface Refusal {
  /** What is locked, and what is not: a sentence for the user. */
  readonly message: string;
  /** Lifts the lock of the sheet; undo locks it again. */
  unlock(): void;
}

/** Changes that move cells or join them: a locked sheet allows none, wherever they are. */
const MOVES: ReadonlySet<string> = new Set([
  InsertRowMutation, InsertColMutation, RemoveRowMutation, RemoveColMutation, MoveRowsMutation, MoveColsMutation, MoveRangeMutation,
  ReorderRangeMutation, AddWorksheetMergeMutation, RemoveWorksheetMergeMutation,
].map(({ id }) => id));

/** Refuses what would change locked cells of the grid, and tells of it. Formulas compute and spill as ever. To be called once a grid. */
export function guardLocks(injector: Injector, refused: (refusal: Refusal) => void): void {
  injector.get(ICommandService).registerCommand(SetExtrasMutation);
  const guard = new LockGuard(injector);
  injector.get(ICommandService).beforeCommandExecuted((command, options) => {
    const refusal = guard.refusalOf(command, options);
    if (!refusal) return;
    refused(refusal);
    // The grid takes this error for "do nothing".
    throw new CustomCommandExecutionError(refusal.message);
  });
}

class LockGuard {
  constructor(private readonly injector: Injector) {}

  refusalOf({ id, params }: Readonly<ICommandInfo>, options?: IExecutionOptions): Refusal | undefined {
    if (id === SetCellEditVisibleOperation.id) return this.openingEditor(params as { visible: boolean });
    if (options?.fromFormula || options?.onlyLocal) return undefined;
    if (id === SetRangeValuesMutation.id) return this.settingValues(params as SettingValues);
    return MOVES.has(id) ? this.moving(params as Place) : undefined;
  }

  private openingEditor({ visible }: { visible: boolean }): Refusal | undefined {
    const at = visible ? this.injector.get(IEditorBridgeService).getEditLocation() : undefined;
    if (!at) return undefined;
    const locked = this.locked({ unitId: at.unitId, subUnitId: at.sheetId });
    return locked && !locked.isOpen(at) ? this.refusal(locked, cellWords(at)) : undefined;
  }

  private settingValues({ cellValue, ...place }: SettingValues): Refusal | undefined {
    const locked = this.locked(place);
    const cell = locked && cellsOf(cellValue).find((at) => !locked.isOpen(at));
    return cell && this.refusal(locked, cellWords(cell));
  }

  private moving(params: Place & { readonly to?: { subUnitId: string }; readonly from?: { subUnitId: string } }): Refusal | undefined {
    const { unitId, subUnitId, from, to } = params;
    for (const sheet of [subUnitId, from?.subUnitId, to?.subUnitId]) {
      const locked = sheet === undefined ? undefined : this.locked({ unitId, subUnitId: sheet });
      if (locked) return this.refusal(locked, `The sheet “${locked.sheet.getName()}” is locked, so its cells cannot be moved, joined or parted`);
    }
    return undefined;
  }

  private locked({ unitId, subUnitId }: Place): LockedSheet | undefined {
    const sheet = this.injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)?.getSheetBySheetId(subUnitId);
    return sheet ? lockedSheet(sheet) : undefined;
  }

  private refusal({ sheet }: LockedSheet, what: string): Refusal {
    return { message: `${what}. Type into the cells with a yellow ground, or unlock the sheet.`, unlock: () => this.unlock(sheet) };
  }

  private unlock(sheet: Worksheet): void {
    const place = { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId() };
    const before = readExtras(sheet);
    const info = (extras: SheetExtras) => ({ id: SetExtrasMutation.id, params: { ...place, extras } });
    const redo = info({ ...before, open: undefined });
    this.injector.get(ICommandService).syncExecuteCommand(redo.id, redo.params);
    this.injector.get(IUndoRedoService).pushUndoRedo({ unitID: place.unitId, undoMutations: [info(before)], redoMutations: [redo] });
  }
}

interface Place {
  readonly unitId: string;
  readonly subUnitId: string;
}

interface SettingValues extends Place {
  readonly cellValue?: IObjectMatrixPrimitiveType<unknown>;
}

function cellsOf(matrix: IObjectMatrixPrimitiveType<unknown> = {}): CellPlace[] {
  return Object.entries(matrix).flatMap(([row, columns]) => Object.keys(columns ?? {}).map((column) => ({ row: Number(row), column: Number(column) })));
}

function cellWords(place: CellPlace): string {
  return `${addressOf(place)} is locked`;
}
