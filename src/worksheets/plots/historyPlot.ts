import type { FilledCell, FilledSheet } from '../filledSheet';
import { outputAxis } from './axis';
import type { PlotData, PlotSeries } from './plotData';
import { present, seriesOf } from './series';

const DAYS_PER_YEAR = 365.25;
const LINES: readonly (readonly [id: string, name: string, drawn: PlotSeries['drawn']])[] = [
  ['middle', 'Line', 'line'], ['upper', 'Band, upper', 'line'], ['lower', 'Band, lower', 'line'],
  ['upper_limit', 'Limit, upper', 'limit'], ['lower_limit', 'Limit, lower', 'limit'],
];

/** Output at capacity by years since the first calibration, with line, prediction band and limits as the sheet has them. */
export function historyPlot(sheet: FilledSheet): PlotData[] {
  const column = (name: string) => sheet.columns(name)?.[0] ?? [];
  const points = seriesOf('Calibrations', column('typed_date'), column('typed_output'), 'points');
  if (!points) return [];
  const first = points.x.reduce((least, day) => Math.min(least, day));
  const inYears = (series: PlotSeries): PlotSeries => ({ ...series, x: series.x.map((day) => (day - first) / DAYS_PER_YEAR) });
  const days: readonly FilledCell[] = column('band_day');
  const lines = LINES.map(([id, name, drawn]) => seriesOf(name, days, column(`band_${id}`), drawn));
  return [{
    id: 'history', title: 'Output at capacity by date', x: 'Years since the first calibration', y: outputAxis(sheet, 'Output'),
    series: present([points, ...lines]).map(inYears),
  }];
}
