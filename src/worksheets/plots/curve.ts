import { netReadingsOf, type AppliedReading, type Block } from '../block';
import type { FilledSheet } from '../filledSheet';
import { appliedAxis, outputAxis } from './axis';
import type { PlotData, PlotSeries } from './plotData';
import { present } from './series';

/** Net output against force: a series a block, the mean of its runs at each row. */
export function curvePlot(sheet: FilledSheet, blocks: readonly Block[]): PlotData[] {
  const series = present(blocks.map((block) => meanCurve(sheet, block)));
  return series.length === 0 ? [] : [{ id: 'curve', title: 'Net output', x: appliedAxis(sheet), y: outputAxis(sheet, 'Net output'), series }];
}

function meanCurve(sheet: FilledSheet, block: Block): PlotSeries | undefined {
  const rows = new Map<number, AppliedReading[]>();
  for (const point of block.runs.flatMap((_, run) => netReadingsOf(sheet, block, run) ?? [])) {
    rows.set(point.row, [...(rows.get(point.row) ?? []), point]);
  }
  if (rows.size === 0) return undefined;
  const inOrder = [...rows].sort(([a], [b]) => a - b).map(([, points]) => points);
  const mean = (points: readonly AppliedReading[]) => points.reduce((sum, { reading }) => sum + reading, 0) / points.length;
  return { name: block.label, x: inOrder.map(([point]) => point.applied), y: inOrder.map(mean), drawn: 'both' };
}
