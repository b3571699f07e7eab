import { readingsOf, type Block } from '../block';
import type { FilledSheet } from '../filledSheet';
import { outputAxis } from './axis';
import type { PlotData, PlotSeries } from './plotData';

/** Change of the output since the first reading against time, a series a run of each block. */
export function creepPlot(sheet: FilledSheet, blocks: readonly Block[]): PlotData[] {
  const series = blocks.flatMap((block) => block.runs.flatMap((_, run): PlotSeries[] => {
    const points = readingsOf(block, run);
    if (points.length === 0 || points[0].row !== 0) return [];
    const [first] = points;
    const name = block.runs.length === 1 ? block.label : `${block.label}, run ${run + 1}`;
    return [{ name, x: points.map(({ applied }) => applied), y: points.map(({ reading }) => reading - first.reading), drawn: 'both' }];
  }));
  return series.length === 0 ? [] : [{ id: 'creep', title: 'Change since the first reading', x: 'Time, min', y: outputAxis(sheet, 'Change'), series }];
}
