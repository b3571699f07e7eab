import { button, element } from '../taskpane/dom';
import type { ErrorFound } from '../hosts/grid/cellReader';
import { byId } from './page';

/** The line under the grid that says what is wrong on this sheet, and goes there. */
export class ErrorStrip {
  private readonly strip = byId('strip');
  private readonly words = element('p', { attributes: { role: 'status' } });
  private readonly ways = element('div', { class: 'strip-ways' });

  /** @param goTo shows a cell. */
  constructor(private readonly goTo: (error: ErrorFound) => void) {
    this.strip.prepend(this.words, this.ways);
  }

  /**
   * Shows the selected cell's error, else the first of the sheet.
   * @param inCell the error that the selected cell holds, followed back to where it began.
   * @param selected address of the selected cell.
   */
  show(sheetId: string, all: readonly ErrorFound[], inCell?: ErrorFound, selected?: string): void {
    const shown = inCell ?? all[0];
    this.strip.classList.toggle('has-error', shown !== undefined);
    const text = shown ? wording(shown, sheetId) : 'No errors on this sheet';
    if (this.words.textContent !== text) this.words.textContent = text;
    this.strip.title = shown ? text : '';
    this.ways.replaceChildren();
    if (!shown) return;
    if (shown.sheetId !== sheetId || shown.address !== selected) {
      this.ways.append(button(`Go to ${placeName(shown, sheetId)}`, () => this.goTo(shown)));
    }
    const next = all[(all.findIndex((error) => isSame(error, shown)) + 1) % all.length];
    if (next && !isSame(next, shown)) this.ways.append(button(`Next of ${all.length}`, () => this.goTo(next)));
  }
}

function isSame(one: ErrorFound, other: ErrorFound): boolean {
  return one.sheetId === other.sheetId && one.address === other.address;
}

function placeName(error: ErrorFound, sheetId: string): string {
  return error.sheetId === sheetId ? error.address : `${error.sheetName}!${error.address}`;
}

function wording(error: ErrorFound, sheetId: string): string {
  return `${placeName(error, sheetId)} ${error.code}: ${error.message}`;
}
