import type { PlotData } from '../../worksheets/plots/sheetPlots';
import { element } from '../dom';
import { shown } from './points';

/** A plot as tables: series with the same points share one, a row a point. */
export function plotTables(plot: PlotData): HTMLElement {
  const shared = new Map<string, PlotData['series'][number][]>();
  for (const series of plot.series) {
    const key = JSON.stringify(series.x);
    shared.set(key, [...(shared.get(key) ?? []), series]);
  }
  return element('div', {
    class: 'rp-plot-table',
    attributes: { tabindex: '0', role: 'region', 'aria-label': `${plot.title} as a table, scrolls` },
    children: [...shared.values()].map((series) => tableOf(plot, series)),
  });
}

function tableOf({ title, x, y }: PlotData, series: readonly PlotData['series'][number][]): HTMLElement {
  return element('table', {
    children: [
      element('caption', { children: [`${title}: ${y}`] }),
      element('thead', { children: [element('tr', { children: [x, ...series.map(({ name }) => name)].map((head) => element('th', { attributes: { scope: 'col' }, children: [head] })) })] }),
      element('tbody', {
        children: series[0].x.map((value, i) => element('tr', {
          children: [
            element('th', { attributes: { scope: 'row' }, children: [shown(value)] }),
            ...series.map((one) => element('td', { children: [cellText(one.y[i])] })),
          ],
        })),
      }),
    ],
  });
}

function cellText(value: number | null | undefined): string {
  return value === null || value === undefined ? '–' : shown(value);
}
