import { IConfirmService, type Injector } from '@univerjs/core';

/** The grid's dialogs that tell of a problem and ask nothing: there is one answer. */
const ALERTS: ReadonlySet<string> = new Set(['sheetNameRepeatAlert', 'sheetNameEmptyAlert', 'sheetNameSpecCharAlert']);

/** What the grid knows of a dialog. */
interface DialogOptions {
  readonly id: string;
  /** Whether it offers "Cancel" and a cross. */
  closable?: boolean;
}

/** Leaves "Cancel" out of dialogs that only tell of a problem; it would do the same as "OK". Escape still closes them. */
export function leaveOutCancel(injector: Injector): void {
  // Dialogs are told of before they are drawn; the service itself stands behind a stand-in that takes no other methods.
  injector.get(IConfirmService).confirmOptions$.subscribe((dialogs) => {
    for (const dialog of dialogs as DialogOptions[]) {
      if (ALERTS.has(dialog.id)) dialog.closable = false;
    }
  });
}
