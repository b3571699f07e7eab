import type { FilledSheet } from '../filledSheet';
import { appliedAxis } from './axis';
import type { PlotData, PlotSeries } from './plotData';
import { present, seriesOf } from './series';

/** The figures of a force-proving instrument against force, in per cent, with the limits of the class wanted; and W with its equation. */
export function provingPlots(sheet: FilledSheet): PlotData[] {
  const forces = sheet.columns('proving_forces')?.[0] ?? [];
  const drawn = (name: string, of: string, how: PlotSeries['drawn'], scale = 100) => seriesOf(name, forces, sheet.columns(`proving_${of}`)?.[0] ?? [], how, scale);
  const plot = (id: string, title: string, figures: readonly (PlotSeries | undefined)[], lines: readonly (PlotSeries | undefined)[], y = `${title}, %`): PlotData[] => {
    const series = present(figures);
    return series.length === 0 ? [] : [{ id: `proving_${id}`, title, x: appliedAxis(sheet), y, series: [...series, ...present(lines)] }];
  };
  return [
    ...plot('b', 'b and b′', [drawn('b, with rotation', 'b', 'both'), drawn('b′, same position', 'b_same', 'both')], [drawn('Limit of b', 'line_b', 'limit'), drawn('Limit of b′', 'line_b_same', 'limit')]),
    ...plot('fc', 'fc, interpolation', [drawn('fc', 'fc', 'both')], [drawn('Limit, upper', 'line_fc', 'limit'), drawn('Limit, lower', 'line_fc', 'limit', -100)], 'fc, %'),
    ...plot('v', 'v, reversibility', [drawn('v', 'v', 'both')], [drawn('Limit', 'line_v', 'limit')], 'v, %'),
    ...plot('w', 'W, expanded uncertainty', [drawn('W, k = 2', 'w', 'points')], [drawn('Equation, a0 raised', 'line_w', 'line')], 'W, %'),
  ];
}
