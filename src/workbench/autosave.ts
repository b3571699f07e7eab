import type { IWorkbookData } from '@univerjs/core';
import type { SavedStatus } from './savedStatus';
import { forgetLeaving, keepWhileLeaving } from './leaving';
import type { Shelf } from './shelf';
import { stamped, type StoredWorkbook } from './storedWorkbook';

/** Milliseconds of quiet after a change before it is stored. */
const QUIET = 400;

/** Stores the workbook soon after each change, and at once when the page is left. */
export class Autosave {
  private timer: number | undefined;
  /** Changes made, and how many of them storage has confirmed. */
  private made = 0;
  private stored = 0;

  constructor(
    private readonly shelf: Shelf,
    private readonly snapshot: () => IWorkbookData,
    private readonly status: SavedStatus,
  ) {
    addEventListener('pagehide', () => this.flush());
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') this.flush();
    });
  }

  /** Something changed. */
  touch(): void {
    this.status.saving();
    this.made += 1;
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => void this.save(stamped(this.snapshot())), QUIET);
  }

  /** Forgets a change that is not stored yet, because another workbook takes its place. */
  cancel(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.stored = this.made;
    forgetLeaving();
  }

  private flush(): void {
    if (this.stored === this.made) return;
    const record = stamped(this.snapshot());
    keepWhileLeaving(record);
    void this.save(record);
  }

  private async save(record: StoredWorkbook): Promise<void> {
    clearTimeout(this.timer);
    this.timer = undefined;
    const upTo = this.made;
    try {
      await this.shelf.write('current.v1', record);
      if (upTo !== this.made) return; // a later change is on its way
      this.stored = upTo;
      forgetLeaving();
      this.status.saved();
    } catch (error) {
      this.status.failed(error);
    }
  }
}
