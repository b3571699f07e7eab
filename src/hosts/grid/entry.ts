import {
  CellValueType, type ICellData, ICommandService, type Injector, isRealNum, IUniverInstanceService, type Nullable, numfmt, UniverInstanceType, type Workbook,
} from '@univerjs/core';
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from '@univerjs/sheets';
import { typedNumber } from './typedNumber';

/**
 * Settles what text put into cells means once its cell is known: in a cell with a date format a date or a time is one, and text that
 * is no plain number, like 0x10, is text. To be called once a grid.
 */
export function settleEntries(injector: Injector): void {
  const instances = injector.get(IUniverInstanceService);
  injector.get(ICommandService).beforeCommandExecuted((command) => {
    if (command.id !== SetRangeValuesMutation.id) return;
    const { unitId, subUnitId, cellValue } = command.params as ISetRangeValuesMutationParams;
    const workbook = instances.getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
    const sheet = workbook?.getSheetBySheetId(subUnitId);
    if (!sheet) return;
    for (const [row, cells] of Object.entries(cellValue ?? {})) {
      for (const [column, cell] of Object.entries((cells ?? {}) as Record<string, Nullable<ICellData>>)) {
        settle(cell, () => sheet.getCellStyle(Number(row), Number(column))?.n?.pattern);
      }
    }
  });
}

/** Changes the cell that is about to be put in place. Its type is still open if it was typed or pasted. */
function settle(cell: Nullable<ICellData>, pattern: () => string | undefined): void {
  if (typeof cell?.v !== 'string' || cell.t || cell.f || cell.p) return;
  const date = dateOf(cell.v, pattern);
  if (date !== undefined) Object.assign(cell, { v: date, t: CellValueType.NUMBER });
  else if (isRealNum(cell.v) && !typedNumber(cell.v)) cell.t = CellValueType.STRING;
}

function dateOf(text: string, pattern: () => string | undefined): number | undefined {
  const date = numfmt.parseDate(text.trim()) ?? numfmt.parseTime(text.trim());
  const wanted = date && pattern();
  return wanted && numfmt.isDateFormat(wanted) ? (date.v as number) : undefined;
}
