import { address, formula } from '../planBuilder';
import type { ChartSeries } from '../plan';
import type { Desk } from './desk';

/** Rows that a plot covers. */
const PLOT_ROWS = 16;

/** A plot as a sheet lays it out. */
export interface Plot {
  readonly title: string;
  readonly x: string;
  readonly y: string;
  readonly series: readonly ChartSeries[];
}

/** A pair of limit lines for a plot, above and below zero. */
export interface LimitLines {
  readonly name: string;
  /** Greatest |x|, its sign included, as a formula. */
  readonly to: string;
  /** Half-width, as a formula that may be empty. */
  readonly limit: string;
  readonly format: string;
  /** Name of the cell of the upper limit, if it has one. */
  readonly called?: string;
}

/** Writes the ends of limit lines as a small table; gives their series and the next free row. */
export function limitLines({ sheet, width, formats }: Desk, row: number, lines: readonly LimitLines[]): { readonly nextRow: number; readonly series: readonly (readonly ChartSeries[])[] } {
  if (lines.length === 0) return { nextRow: row, series: [] };
  sheet.wide(1, row, width, 'heading', 'Limit lines of the plots');
  sheet.acrossTo(width, 1, row + 1, 'header', ['Limit', undefined, undefined, 'from', 'to', 'upper', 'lower']);
  const series = lines.map(({ name, to, limit, format, called }, i) => {
    const at = row + 2 + 2 * i;
    const [above, below] = [address(6, at), address(7, at)];
    sheet.put(1, at, 'label', name);
    sheet.put(4, at, 'reference', 0, formats.applied).put(5, at, 'reference', formula(to), formats.applied);
    sheet.put(6, at, 'reference', formula(`IF(${limit}="","",${limit})`), format).put(7, at, 'reference', formula(`IF(${above}="","",-${above})`), format);
    sheet.put(6, at + 1, 'reference', formula(`IF(${above}="","",${above})`), format).put(7, at + 1, 'reference', formula(`IF(${below}="","",${below})`), format);
    sheet.put(4, at + 1, 'reference', formula(address(5, at)), formats.applied);
    if (called !== undefined) sheet.called(called, above);
    const x = `${address(4, at)}:${address(4, at + 1)}`;
    return ['upper', 'lower'].map((side, j): ChartSeries => ({ name: `${name}, ${side}`, x, y: `${address(6 + j, at)}:${address(6 + j, at + 1)}`, drawn: 'limit' }));
  });
  return { nextRow: row + 2 + 2 * lines.length + 1, series };
}

/** Rows that so many plots take, their heading and a free row included. */
export function plotRows(plots: number): number {
  return plots === 0 ? 0 : 1 + Math.ceil(plots / 2) * (PLOT_ROWS + 1);
}

/** Lays plots side by side, two in a row; gives the next free row. */
export function plotArea({ sheet, width }: Desk, row: number, plots: readonly Plot[]): number {
  if (plots.length === 0) return row;
  sheet.wide(1, row, width, 'heading', plots.length > 1 ? 'Plots' : 'Plot');
  const half = Math.floor(width / 2);
  let top = row + 1;
  for (let i = 0; i < plots.length; i += 2) {
    const pair = plots.slice(i, i + 2);
    pair.forEach((plot, j) => {
      const [from, to] = pair.length === 1 ? [1, width] : j === 0 ? [1, half] : [half + 1, width];
      sheet.chart({ ...plot, over: `${address(from, top)}:${address(to, top + PLOT_ROWS - 1)}` });
    });
    top += PLOT_ROWS + 1;
  }
  return top;
}
