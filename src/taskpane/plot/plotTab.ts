import './plot.css';
import type { SheetContent } from '../../hosts/sheetHost';
import type { PlotData } from '../../worksheets/plots/sheetPlots';
import { button, element } from '../dom';
import type { SheetView } from '../sheetWatch';
import { plotTables } from './plotTable';
import { PlotView } from './plotView';

/** What the tab needs of the pane around it. */
interface PlotParts {
  readonly plots: (content: SheetContent) => readonly PlotData[];
  /** True if the sheet is one for readings at all. */
  readonly isRun: (content: SheetContent) => boolean;
}

/** The plots of the open sheet, one at a time, as a chart or as a table. */
export class PlotTab implements SheetView {
  readonly element: HTMLElement;
  private readonly sheet = element('h2');
  private readonly empty = element('p', { class: 'rp-count', attributes: { role: 'status' } });
  private readonly choice = element('select', { attributes: { id: 'plot-choice' } });
  private readonly asTable = button('Show as table', () => this.toggleTable(), { attributes: { 'aria-pressed': 'false' } });
  private readonly view = new PlotView();
  private readonly table = element('div', { attributes: { hidden: '' } });
  private readonly shownParts: HTMLElement;
  private plots: readonly PlotData[] = [];
  private shown = '';

  constructor(private readonly parts: PlotParts) {
    this.empty.textContent = 'Reading the sheet …';
    this.choice.addEventListener('change', () => this.draw());
    this.shownParts = element('div', {
      attributes: { hidden: '' },
      children: [
        element('div', {
          class: 'rp-choose',
          children: [element('label', { class: 'rp-label', attributes: { for: this.choice.id }, children: ['Plot'] }), this.asTable, this.choice],
        }),
        this.view.element,
        this.table,
      ],
    });
    this.element = element('div', { class: 'rp-scroll rp-part', children: [this.sheet, this.empty, this.shownParts] });
  }

  show(content: SheetContent): void {
    const isRun = this.parts.isRun(content);
    const plots = isRun ? this.parts.plots(content) : [];
    const key = JSON.stringify([content.name, isRun, plots]);
    if (key === this.shown) return;
    this.shown = key;
    this.plots = plots;
    this.sheet.textContent = content.name;
    this.say(plots.length > 0 ? '' : isRun ? 'Nothing to plot yet: the plots come with the readings.' : 'This sheet has no run readings, so there is nothing to plot.');
    this.shownParts.hidden = plots.length === 0;
    this.offer();
    this.draw();
  }

  fail(words: string): void {
    this.shown = '';
    this.sheet.textContent = '';
    this.shownParts.hidden = true;
    this.say(words);
  }

  private say(words: string): void {
    if (this.empty.textContent !== words) this.empty.textContent = words;
  }

  /** Offers the plots there are; the one in sight stays if it still is one. */
  private offer(): void {
    const before = this.choice.value;
    this.choice.replaceChildren(...this.plots.map(({ id, title }) => element('option', { attributes: { value: id }, children: [title] })));
    if (this.plots.some(({ id }) => id === before)) this.choice.value = before;
  }

  private draw(): void {
    const plot = this.plots.find(({ id }) => id === this.choice.value);
    if (!plot) return;
    this.view.show(plot);
    this.table.replaceChildren(plotTables(plot));
  }

  private toggleTable(): void {
    const isTable = Boolean(this.table.hidden);
    this.table.hidden = !isTable;
    this.view.element.hidden = isTable;
    this.asTable.setAttribute('aria-pressed', String(isTable));
  }
}
