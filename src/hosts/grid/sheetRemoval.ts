import { ICommandService, type Injector, IUniverInstanceService, UniverInstanceType, type Workbook } from '@univerjs/core';
import { type IRemoveSheetMutationParams, RemoveSheetMutation, SetWorksheetActiveOperation } from '@univerjs/sheets';

/**
 * Leaves a sheet before it is removed. The grid does so after, and drawing the formulas that referred to it fails in between, whereupon
 * the removal is not noted for undo. To be called once a grid.
 */
export function leaveRemovedSheets(injector: Injector): void {
  const commands = injector.get(ICommandService);
  commands.beforeCommandExecuted((command) => {
    if (command.id !== RemoveSheetMutation.id) return;
    const { unitId, subUnitId } = command.params as IRemoveSheetMutationParams;
    const workbook = injector.get(IUniverInstanceService).getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    const next = workbook?.getActiveSheet().getSheetId() === subUnitId ? neighbour(workbook) : undefined;
    if (next !== undefined) commands.syncExecuteCommand(SetWorksheetActiveOperation.id, { unitId, subUnitId: next });
  });
}

/** The sheet before the one shown, or else the one after it, hidden ones aside. */
function neighbour(workbook: Workbook): string | undefined {
  const shown = workbook.getSheets().filter((sheet) => !sheet.isSheetHidden());
  const index = shown.indexOf(workbook.getActiveSheet());
  return (shown[index - 1] ?? shown[index + 1])?.getSheetId();
}
