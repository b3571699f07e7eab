import { ICommandService, type Injector, type Workbook } from '@univerjs/core';
import { SetWorksheetActiveOperation } from '@univerjs/sheets';
import { finishEditing } from './editing';

/** What the keys need of the grid. */
interface Sheets {
  readonly injector: Injector;
  workbook(): Workbook;
  focus(): void;
}

/**
 * Alt+PageDown and Alt+PageUp open the next sheet and the one before; so do Ctrl+PageDown and Ctrl+PageUp where the browser
 * does not keep them for its own tabs. Enter on a sheet's tab goes on to its cells.
 */
export function openSheetsByKeys(grid: Sheets): void {
  // Caught on its way down: the grid takes PageUp and PageDown for scrolling, whatever is held with them.
  addEventListener('keydown', (event) => {
    if (document.querySelector('dialog[open]') || event.shiftKey || event.metaKey) return;
    const step = { PageDown: 1, PageUp: -1 }[event.key];
    if (step !== undefined && event.altKey !== event.ctrlKey) {
      event.preventDefault();
      event.stopPropagation();
      open(grid, step);
    } else if (event.key === 'Enter' && (event.target as HTMLElement).matches('footer [role="tab"][aria-selected="true"]')) {
      event.preventDefault();
      event.stopPropagation();
      grid.focus();
    }
  }, { capture: true });
}

function open(grid: Sheets, step: number): void {
  const workbook = grid.workbook();
  const shown = workbook.getSheets().filter((sheet) => !sheet.isSheetHidden());
  const next = shown[shown.indexOf(workbook.getActiveSheet()) + step];
  if (!next) return;
  finishEditing(grid.injector);
  void grid.injector.get(ICommandService)
    .executeCommand(SetWorksheetActiveOperation.id, { unitId: workbook.getUnitId(), subUnitId: next.getSheetId() })
    .then(() => grid.focus());
}
