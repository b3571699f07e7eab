import type { Block } from '../block';
import type { FilledSheet } from '../filledSheet';
import { limitOf } from '../resultLimit';
import { appliedAxis } from './axis';
import type { PlotData, PlotSeries } from './plotData';
import { limitLines, present, seriesOf } from './series';

/** Deviation of the mean from the terminal line against force, a series a block, with the limits of non-linearity. */
export function deviationsPlot(sheet: FilledSheet, blocks: readonly Block[]): PlotData[] {
  const drawn = blocks.flatMap((block) => {
    const rows = rowsUnderLoad(block);
    const series = seriesOf(block.label, block.applied.slice(0, rows), (sheet.columns(`deviations_${block.id}`)?.[0] ?? []).slice(0, rows), 'both', 100);
    return series && hasWay(series) ? [{ series, limit: limitOf(sheet, 'nonlinearity', block.id) }] : [];
  });
  if (drawn.length === 0) return [];
  const series = drawn.map((one) => one.series);
  const limits = [...new Set(drawn.map(({ limit }) => limit))].filter((limit) => limit !== undefined);
  const lines = limits.flatMap((limit) => limitLines(100 * limit, present(drawn.map((one) => (one.limit === limit ? one.series : undefined)))));
  return [{ id: 'deviations', title: 'Deviation from the terminal line', x: appliedAxis(sheet), y: 'Deviation, % of rated output', series: [...series, ...lines] }];
}

/** Rows up to the last load, or all if there are loads on the way down: without them, a line back to zero would only hide the others. */
function rowsUnderLoad({ applied }: Block): number {
  const forces = applied.map(({ value }) => Math.abs(Number(value)));
  const last = forces.findLastIndex((force) => force > 0);
  return forces[last] === Math.max(...forces) ? last + 1 : forces.length;
}

/** A terminal line leaves nothing to see at its own ends: there must be a load between them. */
function hasWay({ x }: PlotSeries): boolean {
  return new Set(x.filter((force) => force !== 0)).size > 1;
}
