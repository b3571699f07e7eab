import type { IWorkbookData } from '@univerjs/core';
import { readStored, stamped, type StoredWorkbook } from './storedWorkbook';

/** What lies in a place on the shelf. */
export type Found =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'workbook'; readonly stored: StoredWorkbook }
  | { readonly kind: 'unreadable'; readonly raw: unknown };

/** The one in use, and the one put aside when another was opened in its place. */
export type Place = 'current.v1' | 'previous.v1';

const DATABASE = 'provingsheet';
const STORE = 'workbooks';

/** The workbooks kept in this browser (IndexedDB). Every method rejects with the browser's reason if storage fails. */
export class Shelf {
  private constructor(private readonly database: IDBDatabase) {}

  static async open(): Promise<Shelf> {
    const request = indexedDB.open(DATABASE, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE);
    return new Shelf(await settled(request));
  }

  async read(place: Place): Promise<Found> {
    const raw: unknown = await settled(this.store('readonly').get(place));
    if (raw === undefined) return { kind: 'nothing' };
    const stored = readStored(raw);
    return stored ? { kind: 'workbook', stored } : { kind: 'unreadable', raw };
  }

  async write(place: Place, stored: StoredWorkbook): Promise<void> {
    await this.change((store) => store.put(stored, place));
  }

  /** Puts the workbook in use aside, and another in its place, both or neither. */
  async swap(aside: IWorkbookData, next: IWorkbookData): Promise<void> {
    await this.change((store) => {
      store.put(stamped(aside), 'previous.v1');
      store.put(stamped(next), 'current.v1');
    });
  }

  /** Moves what lies in use to a place of its own, where nothing overwrites it. Resolves with that place's name. */
  async keepUnreadable(): Promise<string> {
    const raw: unknown = await settled(this.store('readonly').get('current.v1'));
    const name = `unreadable ${new Date().toISOString()}`;
    await this.change((store) => {
      if (raw !== undefined) store.put(raw, name);
      store.delete('current.v1');
    });
    return name;
  }

  private store(mode: IDBTransactionMode): IDBObjectStore {
    return this.database.transaction(STORE, mode).objectStore(STORE);
  }

  /** Commits at once, so that a change made while the page closes still arrives. */
  private change(make: (store: IDBObjectStore) => void): Promise<void> {
    return new Promise((resolve, reject) => {
      const transaction = this.database.transaction(STORE, 'readwrite');
      transaction.oncomplete = () => resolve();
      transaction.onabort = () => reject(transaction.error ?? new Error('the browser refused to store'));
      make(transaction.objectStore(STORE));
      transaction.commit();
    });
  }
}

function settled<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error ?? new Error('the browser gave no reason'));
  });
}
