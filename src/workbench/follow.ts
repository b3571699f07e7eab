import { cellFunctionsIn } from '../functions/formulaNames';
import { addressOf } from '../hosts/address';
import { CellErrors, type ErrorFound, nameOf } from '../hosts/grid/cellErrors';
import type { CellReader } from '../hosts/grid/cellReader';
import type { Grid } from '../hosts/grid/createGrid';
import type { FunctionHelp } from '../taskpane/functionHelp';
import { ErrorStrip } from './errorStrip';
import { byId } from './page';

/** Milliseconds after the last of several changes before the page follows. */
const QUIET = 60;

/** Keeps the pane, the strip and the words for screen readers at the selected cell. */
export function followSelection(grid: Grid, cells: CellReader, help: FunctionHelp): void {
  const errors = new CellErrors(cells, grid.injector);
  const strip = new ErrorStrip((there) => void grid.goTo(there.sheetId, there.address).then(() => grid.focus()));
  const words = byId('cell-words');
  let timer: number | undefined;
  const follow = (): void => {
    const selected = grid.selectedCell();
    if (!selected) return;
    const { sheetId } = selected;
    const cell = addressOf(selected);
    const found = cells.formulaAt(sheetId, selected);
    const error = errors.at(sheetId, selected);
    help.show({ cell, functionIds: cellFunctionsIn(found?.formula), ...(error ? { error: errorForPane(error, sheetId, cell) } : {}) });
    strip.show(sheetId, errors.on(sheetId), error, cell);
    words.textContent = `${cell}, ${cells.valueAt(sheetId, selected) ?? 'blank'}`;
  };
  const soon = (): void => {
    clearTimeout(timer);
    timer = window.setTimeout(follow, QUIET);
  };
  // While a formula is typed, the function typed last is what the writer needs to see.
  grid.onTyping((text) => {
    const typed = cellFunctionsIn(text).slice(-1);
    if (typed.length > 0) help.show({ functionIds: typed });
    else if (text === undefined) soon();
  });
  grid.onSelect(soon);
  grid.onChange(soon);
  grid.onCalculated(soon);
  follow();
}

/** The pane names the selected cell itself; a cause elsewhere must be said. */
function errorForPane(error: ErrorFound, sheetId: string, cell: string): { code: string; message: string } {
  const { code, message } = error;
  if (error.sheetId === sheetId && error.address === cell) return { code, message };
  return { code, message: `From ${nameOf(error, sheetId)}: ${message}` };
}
