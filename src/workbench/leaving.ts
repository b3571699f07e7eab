import { readStored, type StoredWorkbook } from './storedWorkbook';

/** Where a change waits that was made just before the page was left. */
const KEY = 'provingsheet.leaving';

/**
 * Keeps what is on the page in the moment it is left. IndexedDB answers later, when the page may be gone already; this store
 * takes text at once. Too large a workbook for it is left to IndexedDB alone.
 */
export function keepWhileLeaving(stored: StoredWorkbook): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(stored));
  } catch {
    forgetLeaving();
  }
}

/** What was kept while leaving, if it can be read. */
export function keptWhileLeaving(): StoredWorkbook | undefined {
  try {
    return readStored(JSON.parse(localStorage.getItem(KEY) ?? 'null'));
  } catch {
    return undefined;
  }
}

/** IndexedDB holds it, or something later. */
export function forgetLeaving(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // A browser that lets nothing be stored has nothing to forget.
  }
}
