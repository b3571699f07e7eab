import type { PlotData } from '../../worksheets/plots/sheetPlots';
import { element } from '../dom';
import { type Chart, createChart } from './chart';
import { colourOf, drawKeys, legend } from './legend';
import { nextPoint, pointsOf, pointWords, type ReadPoint } from './points';

const HINT = 'Point at a mark, or use the arrow keys, to read its values.';
/** Width of a chart before the pane's is known, CSS pixels. */
const FIRST_WIDTH = 288;

/** One plot: chart, legend, and the values of the point that is read. The element stays while data changes, and so does the focus. */
export class PlotView {
  readonly element: HTMLElement;
  private readonly canvas = element('div', { class: 'rp-canvas' });
  private readonly stage: HTMLElement;
  private readonly words = element('p', { class: 'rp-reading' });
  private readonly voice = element('p', { class: 'rp-unseen', attributes: { role: 'status' } });
  private readonly text = element('span', { class: 'rp-axis-text', attributes: { hidden: '' } });
  private readonly line = element('span', { class: 'rp-axis-line', attributes: { hidden: '' } });
  private keys: HTMLElement = element('ul');
  private plot: PlotData | undefined;
  private points: readonly ReadPoint[] = [];
  private read: ReadPoint | undefined;
  private chart: Chart | undefined;

  constructor() {
    this.stage = element('div', {
      class: 'rp-stage',
      // Its arrow keys are its own: a screen reader must hand them on.
      attributes: { tabindex: '0', role: 'application', 'aria-roledescription': 'plot' },
      children: [this.canvas],
    });
    this.stage.addEventListener('keydown', (event) => this.key(event));
    this.element = element('div', { children: [this.stage, this.words, this.voice, this.keys, this.text, this.line] });
    new ResizeObserver(() => this.fit()).observe(this.stage);
    for (const query of ['(prefers-color-scheme: dark)', '(forced-colors: active)']) matchMedia(query).addEventListener('change', () => this.repaint());
  }

  show(plot: PlotData): void {
    const same = plot.id === this.plot?.id;
    this.plot = plot;
    this.points = pointsOf(plot);
    this.stage.setAttribute('aria-label', `${plot.title}. Arrow keys read its values: left and right along a series, up and down to another.`);
    const keys = legend(plot);
    this.keys.replaceWith(keys);
    this.keys = keys;
    this.chart?.destroy();
    const swatches = [...keys.querySelectorAll('.rp-key')];
    const looks = { series: (i: number) => colourOf(swatches[i]), text: () => colourOf(this.text), line: () => colourOf(this.line) };
    this.chart = createChart(this.canvas, plot, this.points, looks, this.stage.clientWidth || FIRST_WIDTH, (point) => this.point(point));
    drawKeys(keys, plot);
    const before = this.read;
    this.point(same && before ? this.points.find(({ series, index }) => series === before.series && index === before.index) : undefined);
  }

  private point(point: ReadPoint | undefined): void {
    this.read = point;
    this.chart?.mark(point);
    this.words.textContent = point && this.plot ? pointWords(this.plot, point) : HINT;
  }

  private key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.altKey || event.metaKey || !/^Arrow|^Home$|^End$/.test(event.key)) return;
    event.preventDefault();
    this.point(nextPoint(this.points, this.read, event.key));
    this.voice.textContent = this.words.textContent;
  }

  private fit(): void {
    const width = this.stage.clientWidth;
    if (width > 0) this.chart?.resize(width);
    // A legend that was hidden had no colours yet.
    this.repaint();
  }

  private repaint(): void {
    if (!this.plot) return;
    drawKeys(this.keys, this.plot);
    this.chart?.redraw();
  }
}
