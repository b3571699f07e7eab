import { ICommandService, type Injector, type Workbook } from '@univerjs/core';
import { SetSelectionsOperation, SetWorksheetActivateCommand } from '@univerjs/sheets';
import { rangeOf } from '../address';

/** Shows a sheet and selects a cell or range of it. */
export async function selectRange(injector: Injector, workbook: Workbook, sheetId: string, address: string): Promise<void> {
  const commands = injector.get(ICommandService);
  const asked = rangeOf(address);
  const isCell = asked.startRow === asked.endRow && asked.startColumn === asked.endColumn;
  const merged = isCell ? workbook.getSheetBySheetId(sheetId)?.getMergedCell(asked.startRow, asked.startColumn) : undefined;
  const range = merged ?? asked;
  const place = { unitId: workbook.getUnitId(), subUnitId: sheetId };
  if (workbook.getActiveSheet().getSheetId() !== sheetId) await commands.executeCommand(SetWorksheetActivateCommand.id, place);
  await commands.executeCommand(SetSelectionsOperation.id, {
    ...place,
    selections: [{
      range,
      primary: {
        actualRow: range.startRow, actualColumn: range.startColumn, isMerged: false, isMergedMainCell: Boolean(merged),
        startRow: range.startRow, startColumn: range.startColumn, endRow: range.endRow, endColumn: range.endColumn,
      },
      style: null,
    }],
  });
}
