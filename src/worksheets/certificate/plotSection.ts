import type { ChartPlan, ChartSeries } from '../plan';
import { address, formula } from '../planBuilder';
import { shownFrom } from './cellReference';
import type { CertificateDesk } from './certificateDesk';

/** Limit lines of a plot, above and below zero: a cell of the run that holds the half-width, and how far the plot goes. */
export interface CertificateLimits {
  readonly name: string;
  readonly limit: string;
  readonly to: string;
}

/** A plot over cells of the certificate. */
export interface CertificatePlot extends Omit<ChartPlan, 'over'> {
  readonly limits?: CertificateLimits;
}

const PLOT_ROWS = 10;

/** Draws plots side by side between columns of the page; the ends of their limit lines stand right of the page. Gives the next free row. */
export function plotRow({ sheet, width }: CertificateDesk, row: number, run: string, plots: readonly CertificatePlot[], from = 1, rows = PLOT_ROWS): number {
  const each = Math.floor((width - from + 1) / plots.length);
  plots.forEach(({ limits, series, ...plot }, i) => {
    const left = from + i * each;
    const last = i === plots.length - 1 ? width : left + each - 1;
    const lines = limits ? limitSeries({ sheet, width }, row + 3 * i, run, limits) : [];
    sheet.chart({ ...plot, series: [...series, ...lines], over: `${address(left, row)}:${address(last, row + rows - 1)}` });
  });
  return row + rows;
}

/** Two points of each limit line: at zero, and at the greatest load. */
function limitSeries({ sheet, width }: CertificateDesk, row: number, run: string, { name, limit, to }: CertificateLimits): ChartSeries[] {
  const [x, upper, lower] = [width + 2, width + 3, width + 4];
  sheet.put(x, row, 'note', `${name}, of the plot`);
  [1, 2].forEach((i) => {
    const above = address(upper, row + i);
    sheet.put(x, row + i, 'reference', i === 1 ? 0 : shownFrom(run, to));
    sheet.put(upper, row + i, 'reference', shownFrom(run, limit)).put(lower, row + i, 'reference', formula(`IF(${above}="","",-${above})`));
  });
  const over = (column: number) => `${address(column, row + 1)}:${address(column, row + 2)}`;
  return [[upper, '+'] as const, [lower, '−'] as const].map(([column, sign]): ChartSeries => ({ name: `${sign}${name}`, x: over(x), y: over(column), drawn: 'limit' }));
}
