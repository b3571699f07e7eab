import type { IWorkbookData } from '@univerjs/core';
import type { SavedStatus } from './savedStatus';
import type { Shelf } from './shelf';

/** Milliseconds of quiet after a change before it is stored. */
const QUIET = 400;

/** Stores the workbook soon after each change, and at once when the page is left. */
export class Autosave {
  private timer: number | undefined;

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
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => void this.save(), QUIET);
  }

  /** Forgets a change that is not stored yet, because another workbook takes its place. */
  cancel(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  private flush(): void {
    if (this.timer !== undefined) void this.save();
  }

  private async save(): Promise<void> {
    this.cancel();
    try {
      await this.shelf.write('current.v1', this.snapshot());
      if (this.timer === undefined) this.status.saved();
    } catch (error) {
      this.status.failed(error);
    }
  }
}
