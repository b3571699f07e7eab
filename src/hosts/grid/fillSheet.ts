import type { ICellData, IObjectMatrixPrimitiveType, Nullable, Worksheet } from '@univerjs/core';
import { SetRangeValuesMutation } from '@univerjs/sheets';
import type { Entry } from '../../worksheets/plan';
import { addressOf } from '../address';
import { type Hindrance, type PlacedEntry, placedEntries, refuseHindered } from '../entries';
import { toCellData } from './cellData';
import { CellReader, type OpenWorkbook } from './cellReader';
import { lockedSheet } from './lockedSheet';
import type { Step } from './writeSheet';

/** The step that puts entries into cells of a sheet, and what takes it back. Throws, naming the cell, on what cannot be filled. */
export function filling(grid: OpenWorkbook, sheet: Worksheet, entries: readonly Entry[]): Step {
  const placed = placedEntries(sheet.getName(), entries);
  const reader = new CellReader(grid);
  const lock = lockedSheet(sheet);
  for (const { at, row, column } of placed) {
    if (row >= sheet.getRowCount() || column >= sheet.getColumnCount()) {
      const last = addressOf({ row: sheet.getRowCount() - 1, column: sheet.getColumnCount() - 1 });
      throw new Error(`'${sheet.getName()}'!${at}: found a cell outside of the sheet, which ends with ${last}. Nothing was filled.`);
    }
  }
  refuseHindered(sheet.getName(), placed, (entry): Hindrance | undefined => {
    if (reader.ownFormula(sheet.getSheetId(), entry) !== undefined) return { kind: 'formula' };
    const source = reader.spillSource(sheet.getSheetId(), entry);
    if (source) return { kind: 'spill', source: addressOf(source) };
    return lock && !lock.isOpen(entry) ? { kind: 'locked' } : undefined;
  });
  const matrix = sheet.getCellMatrix();
  return {
    change: setting(sheet, placed, ({ value }) => toCellData(value)),
    back: setting(sheet, placed, ({ row, column }) => matrix.getValue(row, column)),
  };
}

/** Sets what cells hold, and leaves their looks alone. */
function setting(sheet: Worksheet, entries: readonly PlacedEntry[], contentOf: (entry: PlacedEntry) => Nullable<ICellData>): Step['change'] {
  const cellValue: IObjectMatrixPrimitiveType<ICellData> = {};
  for (const entry of entries) {
    const { v = null, t = null, p = null } = contentOf(entry) ?? {};
    (cellValue[entry.row] ??= {})[entry.column] = { v, t, f: null, si: null, p };
  }
  return { id: SetRangeValuesMutation.id, params: { unitId: sheet.getUnitId(), subUnitId: sheet.getSheetId(), cellValue } };
}
