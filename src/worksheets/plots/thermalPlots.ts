import type { FilledSheet } from '../filledSheet';
import type { PlotData } from './plotData';
import { present, seriesOf } from './series';

const KINDS = [
  { what: 'zero', title: 'Zero against temperature', of: 'rated output' },
  { what: 'span', title: 'Span against temperature', of: 'span' },
] as const;

/** Change of zero and of span since the reference temperature, against the temperature of the cell, each with its line. */
export function thermalPlots(sheet: FilledSheet): PlotData[] {
  const temperatures = sheet.columns('typed_temperature')?.[0] ?? [];
  return KINDS.flatMap(({ what, title, of }): PlotData[] => {
    const column = (name: string) => sheet.columns(name)?.[0] ?? [];
    const points = seriesOf('Change', temperatures, column(`${what}_changes`), 'points', 100);
    if (!points) return [];
    const line = seriesOf('Fitted line', temperatures, column(`${what}_line`), 'line', 100);
    return [{ id: `thermal_${what}`, title, x: 'Temperature, °C', y: `Change, % of ${of}`, series: present([points, line]) }];
  });
}
