import { blocksOf } from '../block';
import { FilledSheet } from '../filledSheet';
import type { ReadSheet } from '../readSheet';
import { creepPlot } from './creepPlot';
import { curvePlot } from './curve';
import { deviationsPlot } from './deviations';
import { errorsPlot } from './errorsPlot';
import type { PlotData } from './plotData';
import { provingPlots } from './provingPlots';
import { historyPlot } from './historyPlot';
import { residualsPlots } from './residuals';
import { thermalPlots } from './thermalPlots';

export type { PlotData, PlotSeries } from './plotData';

/**
 * The plots that a filled-in sheet gives rise to; none of a kind that there is nothing to draw of. Blank cells are left
 * out; a series runs in the order applied, so that a run up and down shows as a loop.
 */
export function sheetPlots(read: ReadSheet): readonly PlotData[] {
  const sheet = new FilledSheet(read);
  const blocks = blocksOf(sheet);
  const loaded = blocks.filter(({ over }) => over === 'forces');
  return [
    ...provingPlots(sheet), ...errorsPlot(sheet, loaded), ...deviationsPlot(sheet, loaded), ...residualsPlots(sheet, loaded), ...curvePlot(sheet, loaded),
    ...creepPlot(sheet, blocks.filter(({ over }) => over === 'times')), ...thermalPlots(sheet), ...historyPlot(sheet),
  ];
}
