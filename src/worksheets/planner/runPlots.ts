import { address } from '../planBuilder';
import { type Desk, PERCENT } from './desk';
import { type LimitLines, limitLines, type Plot, plotArea, plotRows } from './plots';
import { type SeriesBlock, span } from './seriesBlock';

/** What the plots of a block are drawn from. */
export interface RunPlotCells {
  readonly block: SeriesBlock;
  /** Told in the titles, if there is more than one. */
  readonly direction?: string;
  /** Cell of the limit of non-linearity, if the sheet has one. */
  readonly limit?: string;
  /** Cell of the residual standard deviation, if there is a calibration polynomial. */
  readonly sd?: string;
  /** First row of the table of residuals. */
  readonly residualRow?: number;
  /** Name of the cell of the limit of residuals. */
  readonly limitName: string;
}

/** Plots laid out; their limit lines are still to be written, from `linesRow` on. */
export interface LaidPlots {
  readonly nextRow: number;
  /** Writes the ends of the limit lines, and draws the plots with them; gives the next free row. */
  readonly finish: (linesRow: number) => number;
}

/** Deviations from the terminal line, and residuals of the polynomial, with their limit lines, whose ends stand further down. */
export function runPlots(desk: Desk, row: number, cells: readonly RunPlotCells[]): LaidPlots {
  const drawn = cells.flatMap((own) => [...deviations(desk, own), ...residuals(desk, own)]);
  const lines = drawn.flatMap(({ line }) => (line === undefined ? [] : [line]));
  return {
    nextRow: row + plotRows(drawn.length),
    finish: (linesRow) => {
      const { nextRow, series } = limitLines(desk, linesRow, lines);
      plotArea(desk, row, drawn.map(({ plot, line }) => ({ ...plot, series: [...plot.series, ...(line === undefined ? [] : series[lines.indexOf(line)])] })));
      return nextRow;
    },
  };
}

interface Drawn {
  readonly plot: Plot;
  readonly line?: LimitLines;
}

function deviations({ item }: Desk, { block, direction, limit }: RunPlotCells): Drawn[] {
  const { points } = block.answers;
  const top = block.topRow - block.firstRow;
  if (points.filter((point) => point > 0).length < 2) return [];
  // Without loads on the way down, a line back to zero would only hide the others.
  const last = points.slice(top + 1).some((point) => point > 0) ? block.lastRow : block.topRow;
  const rows = (column: number) => `${address(column, block.firstRow)}:${address(column, last)}`;
  return [{
    plot: {
      title: `Deviation from the terminal line${of(direction)}`, x: `Applied, ${item.unit}`, y: 'of rated output',
      series: [{ name: 'Mean net', x: rows(block.forceColumn), y: rows(block.meanColumn + 1), drawn: 'both' }],
    },
    ...(limit === undefined ? {} : { line: { name: `Non-linearity${of(direction)}`, to: topForce(block), limit, format: PERCENT } }),
  }];
}

function residuals({ item }: Desk, { block, direction, sd, residualRow, limitName }: RunPlotCells): Drawn[] {
  if (sd === undefined || residualRow === undefined) return [];
  const zeros = block.answers.points.at(-1) === 0 ? 1 : 0;
  const rows = (column: number) => `${address(column, residualRow + 1)}:${address(column, residualRow + block.lastRow - block.firstRow - zeros)}`;
  return [{
    plot: {
      title: `Residuals of the polynomial${of(direction)}`, x: `Applied, ${item.unit}`, y: item.outputUnit,
      series: Array.from({ length: block.answers.runs }, (_, k) => ({ name: `Run ${k + 1}`, x: rows(1), y: rows(3 + k), drawn: 'points' as const })),
    },
    line: { name: `2.4·s${of(direction)}`, to: topForce(block), limit: `IF(${sd}="","",2.4*${sd})`, format: '0.00E+00', called: limitName },
  }];
}

function topForce(block: SeriesBlock): string {
  return span({ ...block, firstRow: block.topRow, lastRow: block.topRow }, block.forceColumn).split(':')[0];
}

function of(direction: string | undefined): string {
  return direction === undefined ? '' : `, ${direction}`;
}
