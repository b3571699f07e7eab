import { addressOf, placeOf } from '../hosts/address';
import type { Grid } from '../hosts/grid/createGrid';

/** Where the place in use is kept: beside the workbook, since going to another cell changes nothing in it. */
const KEY = 'provingsheet.place';

/** Milliseconds after the last of several moves before the place is kept. */
const QUIET = 200;

/** The sheet and the cell in use, and the workbook they belong to. */
interface Place {
  readonly workbook: string;
  readonly sheet: string;
  readonly cell: string;
}

/** Keeps the sheet and the cell in use, from here on. */
export function keepPlace(grid: Grid): void {
  let timer: number | undefined;
  const keep = (): void => {
    clearTimeout(timer);
    const selected = grid.selectedCell();
    if (selected) write({ workbook: grid.workbook().getUnitId(), sheet: selected.sheetId, cell: addressOf(selected) });
  };
  grid.onSelect(() => {
    clearTimeout(timer);
    timer = window.setTimeout(keep, QUIET);
  });
  addEventListener('pagehide', keep);
}

/** Goes to the sheet and the cell that were in use last, if the workbook on the page is the one they belong to and has them. */
export async function returnToPlace(grid: Grid): Promise<void> {
  const place = read();
  const workbook = grid.workbook();
  if (place?.workbook !== workbook.getUnitId()) return;
  const sheet = workbook.getSheetBySheetId(place.sheet);
  if (!sheet || sheet.isSheetHidden()) return;
  const { row, column } = placeOf(place.cell);
  if (row < sheet.getRowCount() && column < sheet.getColumnCount()) await grid.goTo(place.sheet, place.cell);
}

function write(place: Place): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(place));
  } catch {
    // A browser that lets nothing be stored opens the first sheet.
  }
}

function read(): Place | undefined {
  try {
    const raw = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Partial<Place> | null;
    const isPlace = typeof raw?.workbook === 'string' && typeof raw.sheet === 'string' && /^[A-Z]{1,3}[1-9]\d{0,6}$/.test(raw.cell ?? '');
    return isPlace ? (raw as Place) : undefined;
  } catch {
    return undefined;
  }
}
