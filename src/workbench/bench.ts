import type { IWorkbookData } from '@univerjs/core';
import { leaveOutCancel } from '../hosts/grid/alerts';
import { CellReader } from '../hosts/grid/cellReader';
import { labelChrome } from '../hosts/grid/chromeLabels';
import { createGrid, type Grid } from '../hosts/grid/createGrid';
import { describeCellFunctions } from '../hosts/grid/describeFunctions';
import { finishEditing } from '../hosts/grid/editing';
import { registerCellFunctions } from '../hosts/grid/registerFunctions';
import { GridSheets } from '../hosts/grid/gridSheets';
import { openSheetsByKeys } from '../hosts/grid/sheetKeys';
import { watchSpills } from '../hosts/grid/spillWatch';
import { workbookData } from '../hosts/grid/workbook';
import { createPane } from '../taskpane/pane';
import { worksheetParts } from '../taskpane/worksheetParts';
import { firstWorkbook } from '../worksheets/firstWorkbook';
import { Autosave } from './autosave';
import { Exchange } from './exchange';
import { fileParts } from './fileParts';
import { followSelection } from './follow';
import { keepPlace, returnToPlace } from './lastPlace';
import type { Loading } from './loading';
import { makeRoom } from './makeRoom';
import { showNotice } from './notice';
import { warnOfOtherTab } from './otherTab';
import { byId } from './page';
import { Pane } from './pane';
import { exposeProbe } from './probe';
import { moveByRegions } from './regions';
import { restoreWork } from './restore';
import { offerSaving } from './saveButton';
import { SavedStatus } from './savedStatus';
import type { Shelf } from './shelf';
import { claimWorkbook } from './tabLock';

/** Opens the workbench: the stored workbook, or the first one, calculated and followed. */
export async function openBench(loading: Loading): Promise<void> {
  loading.stageDone();
  const sidePane = new Pane();
  const status = new SavedStatus();
  // Claimed before it is read: what another tab saves last is read, and one that is only reloaded comes back to it in time.
  const isOurs = await claimWorkbook();
  const work = await restoreWork(status);
  const { shelf } = work;
  if (shelf) loading.putAside = async () => void (await shelf.keepUnreadable());

  const grid = createGrid(byId('grid'));
  await grid.open(work.workbook ?? newFirst());
  labelChrome(byId('grid'));
  leaveOutCancel(grid.injector);
  grid.onRefused(({ message, unlock }) => showNotice(message, { label: 'Unlock this sheet', take: unlock }));
  loading.stageDone();

  registerCellFunctions(grid.injector);
  describeCellFunctions(grid.injector);
  loading.stageDone();

  await grid.calculate();
  watchSpills(grid);
  await returnToPlace(grid);
  const cells = new CellReader(grid);
  const host = new GridSheets(grid, async (sheets) => (await import(/* webpackChunkName: "file" */ './writeFile')).writeFile(sheets));
  const toSheet = (): void => {
    sidePane.giveWay();
    grid.focus();
  };
  const pane = createPane(byId('run-pane'), { ...worksheetParts, ...fileParts, host, toSheet, makeRoom: () => makeRoom(host) });
  followSelection(grid, cells, pane.help);
  await painted();
  loading.stageDone();

  const exchange = storing(grid, status, isOurs, shelf);
  if (exchange) offerFirstWorkbook(exchange);
  offerSaving(host, () => finishEditing(grid.injector));
  exposeProbe(grid, cells, host);
  openSheetsByKeys(grid);
  moveByRegions({ focus: () => grid.focus(), finishEditing: () => finishEditing(grid.injector) });
  if (document.activeElement === document.body) grid.focus();
}

/** Ids differ, so that the grid never takes one workbook for another. */
function newFirst(): IWorkbookData {
  return workbookData(firstWorkbook(), `workbook-${crypto.randomUUID()}`);
}

/** Stores every change from here on. Undefined if another tab does, whose work this one must leave alone. */
function storing(grid: Grid, status: SavedStatus, isOurs: boolean, shelf?: Shelf): Exchange | undefined {
  const parts = { grid, first: newFirst, failed: (error: unknown) => status.failed(error) };
  if (!shelf) return new Exchange(parts);
  if (!isOurs) {
    status.elsewhere();
    warnOfOtherTab();
    return undefined;
  }
  const autosave = new Autosave(shelf, () => grid.snapshot(), status);
  grid.onChange(() => autosave.touch());
  keepPlace(grid);
  status.saved();
  return new Exchange({ ...parts, shelf, autosave });
}

function offerFirstWorkbook(exchange: Exchange): void {
  const button = byId<HTMLButtonElement>('first-button');
  button.addEventListener('click', () => exchange.start());
  button.disabled = false;
}

/** Two frames later the canvas shows what was calculated. */
function painted(): Promise<void> {
  return new Promise((resolve) => {
    requestAnimationFrame(() => requestAnimationFrame(() => resolve()));
  });
}
