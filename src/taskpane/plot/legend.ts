import type { PlotData } from '../../worksheets/plots/sheetPlots';
import { element } from '../dom';
import { MARKERS } from './markers';

/** Colours there are; after the last one they begin again, with other marks. */
export const COLOURS = 6;

/** The class that gives a series its colour. */
export function colourClass({ series }: PlotData, i: number): string {
  return series[i].drawn === 'limit' ? 'rp-limit' : `rp-colour-${series.slice(0, i).filter(({ drawn }) => drawn !== 'limit').length % COLOURS}`;
}

/** The names of the series, each with its mark or line. */
export function legend(plot: PlotData): HTMLElement {
  return element('ul', {
    class: 'rp-legend',
    children: plot.series.map(({ name, drawn }, i) => {
      const key = element('canvas', { class: `rp-key ${colourClass(plot, i)}`, attributes: { 'aria-hidden': 'true' } });
      return element('li', { children: [key, element('span', { children: [drawn === 'limit' ? `${name} (dashed)` : name] })] });
    }),
  });
}

/** Draws the marks of a legend in the colours they have now. */
export function drawKeys(list: HTMLElement, plot: PlotData): void {
  const ratio = devicePixelRatio;
  list.querySelectorAll<HTMLCanvasElement>('.rp-key').forEach((key, i) => {
    key.width = 24 * ratio;
    key.height = 14 * ratio;
    const context = key.getContext('2d');
    if (!context) return;
    const { drawn } = plot.series[i];
    context.strokeStyle = context.fillStyle = colourOf(key);
    context.scale(ratio, ratio);
    if (drawn !== 'points') {
      context.lineWidth = 1.75;
      context.setLineDash(drawn === 'limit' ? [6, 4] : []);
      context.beginPath();
      context.moveTo(1, 7);
      context.lineTo(23, 7);
      context.stroke();
    }
    if (drawn === 'points' || drawn === 'both') {
      context.beginPath();
      MARKERS[i % MARKERS.length](context, 12, 7, 4);
      context.fill();
    }
  });
}

/** The colour an element has now: by theme, or by forced colours. */
export function colourOf(target: Element): string {
  return getComputedStyle(target).color;
}
