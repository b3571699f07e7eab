import type { IWorkbookData } from '@univerjs/core';
import { showNotice } from './notice';
import type { SavedStatus } from './savedStatus';
import { Shelf } from './shelf';

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
  if (found.kind === 'workbook') return { shelf, workbook: found.stored.workbook };
  if (found.kind === 'unreadable') {
    const name = await shelf.keepUnreadable();
    showNotice(`Your stored workbook could not be read, so the first workbook is open. What was stored is kept in this browser as “${name}”.`, {
      label: 'Save it as a file',
      take: () => saveAsFile(found.raw, `provingsheet ${name.replaceAll(':', '.')}.json`),
    });
  }
  return { shelf };
}

function saveAsFile(raw: unknown, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([JSON.stringify(raw, null, 2) ?? String(raw)], { type: 'application/json' }));
  link.download = name;
  link.click();
  // The browser reads the address after this turn.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
