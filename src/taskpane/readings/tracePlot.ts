import { decimated } from '../../worksheets/logger/decimate';
import type { Log, LogChannel } from '../../worksheets/logger/log';
import type { Stretch } from '../../worksheets/logger/stretch';
import type { Trace } from '../../worksheets/logger/trace';
import type { PlotData } from '../../worksheets/plots/sheetPlots';

/** Points that a trace is drawn with. */
const DRAWN = 1200;

/** A channel over time, its steady stretches shaded, and the readings taken marked. */
export function tracePlot({ basis }: Log, { name, unit }: LogChannel, trace: Trace, stretches: readonly Stretch[], used: readonly Stretch[]): PlotData {
  const { x, y } = decimated(trace, DRAWN);
  const isTime = basis !== 'samples';
  const marks = (which: readonly Stretch[]) => ({ x: which.map(({ from, to }) => (from + to) / 2), y: which.map(({ mean }) => mean), drawn: 'points' as const });
  const rest = stretches.filter((stretch) => !used.includes(stretch));
  return {
    id: 'log', title: 'Log', x: isTime ? 'Time, s' : 'Sample', y: unit ? `${name}, ${unit}` : name,
    series: [
      { name, x, y, drawn: 'line' },
      ...(rest.length > 0 ? [{ name: 'Steady, not used', ...marks(rest) }] : []),
      ...(used.length > 0 ? [{ name: 'Readings', ...marks(used) }] : []),
    ],
    bands: stretches.filter(({ from, to }) => to > from).map(({ from, to }) => ({ from, to })),
  };
}
