import { button, element } from '../taskpane/dom';
import { causeOf, type ErrorFound, type NamedCell, nameOf } from '../hosts/grid/cellErrors';
import { byId } from './page';

/** The line under the grid that says what is wrong on this sheet, and goes there. */
export class ErrorStrip {
  private readonly strip = byId('strip');
  private readonly words = element('p', { attributes: { role: 'status' } });
  private readonly ways = element('div', { class: 'strip-ways' });

  /** @param goTo shows a cell. */
  constructor(private readonly goTo: (cell: NamedCell) => void) {
    this.strip.prepend(this.words, this.ways);
  }

  /**
   * Shows the selected cell's error, else the one it is to blame for, else the first of the sheet.
   * @param inCell the error that the selected cell holds, followed back to where it began.
   * @param selected address of the selected cell.
   */
  show(sheetId: string, all: readonly ErrorFound[], inCell: ErrorFound | undefined, selected: string): void {
    const isSelected = (cell?: NamedCell): boolean => cell?.sheetId === sheetId && cell.address === selected;
    const shown = inCell ?? all.find(({ input }) => isSelected(input)) ?? all[0];
    this.strip.classList.toggle('has-error', shown !== undefined);
    const text = shown ? wording(shown, sheetId) : 'No errors on this sheet';
    if (this.words.textContent !== text) this.words.textContent = text;
    this.ways.replaceChildren();
    if (!shown) return;
    const there = [shown.input, shown].filter((cell) => cell !== undefined && !isSelected(cell));
    // The cell to mend can be the failing one itself.
    const ways = new Map(there.map((cell) => [`Go to ${nameOf(cell!, sheetId)}`, cell!]));
    for (const [label, cell] of ways) this.offer(label, cell);
    const next = all[(all.findIndex((error) => causeOf(error) === causeOf(shown)) + 1) % all.length];
    if (next && all.length > 1) this.offer(`Next of ${all.length}`, next);
  }

  private offer(label: string, cell: NamedCell): void {
    this.ways.append(button(label, () => this.goTo(cell)));
  }
}

function wording(error: ErrorFound, sheetId: string): string {
  return `${nameOf(error, sheetId)} ${error.code}: ${error.message}`;
}
