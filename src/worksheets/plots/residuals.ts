import type { Block } from '../block';
import type { FilledSheet } from '../filledSheet';
import { appliedAxis, outputAxis } from './axis';
import type { PlotData } from './plotData';
import { limitLines, present, runName, seriesOf } from './series';

/** Residuals of the calibration polynomial against force: a plot a block, a series a run, with lines at ± 2.4·s. */
export function residualsPlots(sheet: FilledSheet, blocks: readonly Block[]): PlotData[] {
  return blocks.flatMap((block) => {
    const runs = sheet.columns(`residuals_${block.id}`) ?? [];
    const series = present(runs.map((residuals, run) => seriesOf(runName(block, run), block.applied, residuals, 'points')));
    if (series.length === 0) return [];
    return [{
      id: `residuals_${block.id}`, title: `Residuals, ${block.label.toLowerCase()}`, x: appliedAxis(sheet), y: outputAxis(sheet, 'Residual'),
      series: [...series, ...limitLines(residualLimit(sheet, block), series, '2.4 s')],
    }];
  });
}

/** 2.4·s as the sheet states it, or of the s that it states for the block. */
function residualLimit(sheet: FilledSheet, block: Block): number | undefined {
  const stated = sheet.number(`residual_limit_${block.id}`) ?? sheet.number('residual_limit');
  if (stated !== undefined) return Math.abs(stated);
  const sd = sheet.number(`value_residual_sd_${block.id}`) ?? sheet.number('value_residual_sd');
  return sd === undefined ? undefined : 2.4 * sd;
}
