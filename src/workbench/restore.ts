import type { IWorkbookData } from '@univerjs/core';
import { showNotice } from './notice';
import type { SavedStatus } from './savedStatus';
import { keptWhileLeaving } from './leaving';
import { Shelf } from './shelf';
import type { StoredWorkbook } from './storedWorkbook';

/** What storage held at the start. */
export interface RestoredWork {
  /** Undefined if the browser lets this page store nothing. */
  readonly shelf?: Shelf;
  /** Undefined if nothing readable was stored. */
  readonly workbook?: IWorkbookData;
}

/** Reads the stored work. What cannot be read is kept in a place of its own, and a notice says so. */
export async function restoreWork(status: SavedStatus): Promise<RestoredWork> {
  let shelf: Shelf;
  try {
    shelf = await Shelf.open();
  } catch (error) {
    status.failed(error);
    return {};
  }
  const found = await shelf.read('current.v1');
  const stored = later(found.kind === 'workbook' ? found.stored : undefined, keptWhileLeaving());
  if (found.kind === 'unreadable') await putAside(shelf, found.raw, stored ? 'the last one that could' : 'the first workbook');
  return { shelf, workbook: stored?.workbook };
}

function later(a: StoredWorkbook | undefined, b: StoredWorkbook | undefined): StoredWorkbook | undefined {
  if (!a || !b) return a ?? b;
  return b.savedAt > a.savedAt ? b : a;
}

async function putAside(shelf: Shelf, raw: unknown, opened: string): Promise<void> {
  const name = await shelf.keepUnreadable();
  showNotice(`Your stored workbook could not be read, so ${opened} is open. What was stored is kept in this browser as “${name}”.`, {
    label: 'Save it as a file',
    take: () => saveAsFile(raw, `provingsheet ${name.replaceAll(':', '.')}.json`),
  });
}

function saveAsFile(raw: unknown, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([JSON.stringify(raw, null, 2) ?? String(raw)], { type: 'application/json' }));
  link.download = name;
  link.click();
  // The browser reads the address after this turn.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
