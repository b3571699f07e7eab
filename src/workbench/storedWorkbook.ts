import type { IWorkbookData } from '@univerjs/core';

/** A workbook in the browser's storage. */
export interface StoredWorkbook {
  /** Version of this record's form. */
  readonly form: 1;
  /** When it was stored, ISO 8601. */
  readonly savedAt: string;
  readonly workbook: IWorkbookData;
}

/** A workbook with the time it is stored at. */
export function stamped(workbook: IWorkbookData): StoredWorkbook {
  return { form: 1, savedAt: new Date().toISOString(), workbook };
}

/** What was stored, if it is a workbook that the grid can open. */
export function readStored(raw: unknown): StoredWorkbook | undefined {
  return isStoredWorkbook(raw) ? raw : undefined;
}

function isStoredWorkbook(raw: unknown): raw is StoredWorkbook {
  if (!isRecord(raw) || raw.form !== 1 || typeof raw.savedAt !== 'string' || !isRecord(raw.workbook)) return false;
  const { id, sheetOrder, sheets } = raw.workbook;
  if (typeof id !== 'string' || !Array.isArray(sheetOrder) || sheetOrder.length === 0 || !isRecord(sheets)) return false;
  return sheetOrder.every((sheetId: string) => {
    const sheet = sheets[sheetId];
    return isRecord(sheet) && typeof sheet.name === 'string' && isRecord(sheet.cellData);
  });
}

function isRecord(raw: unknown): raw is Record<string, unknown> {
  return typeof raw === 'object' && raw !== null && !Array.isArray(raw);
}
