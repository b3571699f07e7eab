import type { ChartSeries } from '../plan';
import { address, formula } from '../planBuilder';
import { type Desk, PERCENT } from '../planner/desk';
import { type Plot, plotArea, plotRows } from '../planner/plots';
import type { BlockCells } from './comparisonBlock';

/** Rows that the plots take; they are laid from `row` on, and the ends of their lines stand further down, from `linesRow` on. */
export function comparisonPlots(desk: Desk, row: number, linesRow: number, blocks: readonly BlockCells[]): number {
  const { sheet, width } = desk;
  sheet.wide(1, linesRow, width, 'heading', 'Tolerance lines of the plots');
  let next = linesRow + 1;
  const plots = blocks.map((cells): Plot => {
    const lines = toleranceLines(desk, next, cells);
    next = lines.nextRow;
    const { range, block } = cells;
    // Without loads on the way down, a line back to zero would only hide the others.
    const last = block.found.block.applied.slice(block.top + 1).some(({ value }) => value !== 0) ? cells.lastRow : cells.topRow;
    const drawn = (column: 'force' | 'before' | 'after') => range(column, cells.firstRow, last);
    const x = drawn('force');
    return {
      title: `Deviation, ${block.words}`, x: `${block.indication ? 'Expected' : 'Applied'}, ${desk.item.unit}`, y: 'of rated output',
      series: [
        { name: block.left ? 'As found' : 'As found, final', x, y: drawn('before'), drawn: 'both' },
        ...(block.left ? [{ name: 'As left', x, y: drawn('after'), drawn: 'both' as const }] : []),
        ...lines.series,
      ],
    };
  });
  plotArea(desk, row, plots);
  return next;
}

export function comparisonPlotRows(blocks: number): number {
  return plotRows(blocks);
}

/** The tolerance above and below zero at each force, once for every force, since dashes drawn twice fill each other's gaps. */
function toleranceLines({ sheet, item, formats }: Desk, row: number, { block, firstRow, range }: BlockCells): { readonly nextRow: number; readonly series: readonly ChartSeries[] } {
  sheet.across(1, row, 'header', ['Force', 'Upper', 'Lower']).across(1, row + 1, 'header', [item.unit, 'of RO', 'of RO']);
  const points = risingPoints(block.found.block.applied.map(({ value }) => (typeof value === 'number' ? value : undefined)));
  points.forEach((point, i) => {
    const at = row + 2 + i;
    const [force, limit] = [range('force', firstRow + point, firstRow + point), range('limit', firstRow + point, firstRow + point)];
    sheet.put(1, at, 'reference', formula(`IF(${force}="","",${force})`), formats.applied);
    sheet.put(2, at, 'reference', formula(`IF(${limit}="","",${limit})`), PERCENT).put(3, at, 'reference', formula(`IF(${limit}="","",-${limit})`), PERCENT);
  });
  const column = (at: number) => `${address(at, row + 2)}:${address(at, row + 1 + points.length)}`;
  return {
    nextRow: row + 2 + points.length + 1,
    series: [['upper', 2], ['lower', 3]].map(([side, at]): ChartSeries => ({ name: `Tolerance, ${side}`, x: column(1), y: column(Number(at)), drawn: 'limit' })),
  };
}

/** Places of the different forces by their size; all places where a force is not known. */
function risingPoints(applied: readonly (number | undefined)[]): number[] {
  const places = applied.map((_, i) => i);
  if (applied.some((value) => value === undefined)) return places;
  const sizes = applied.map((value) => Math.abs(value as number));
  return places.filter((i) => sizes.indexOf(sizes[i]) === i).sort((a, b) => sizes[a] - sizes[b]);
}
