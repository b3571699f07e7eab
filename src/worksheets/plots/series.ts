import type { Block } from '../block';
import type { FilledCell } from '../filledSheet';
import type { PlotSeries } from './plotData';

/** Points of two columns where both hold numbers, in the order of the rows; `scale` multiplies y. Undefined if there is none. */
export function seriesOf(
  name: string, x: readonly FilledCell[], y: readonly FilledCell[], drawn: PlotSeries['drawn'], scale = 1,
): PlotSeries | undefined {
  const points = x.flatMap((at, row) => {
    const value = y[row]?.value;
    return typeof at.value === 'number' && typeof value === 'number' ? [{ x: at.value, y: value * scale }] : [];
  });
  return points.length === 0 ? undefined : { name, x: points.map((point) => point.x), y: points.map((point) => point.y), drawn };
}

/** The series that are there. */
export function present(series: readonly (PlotSeries | undefined)[]): PlotSeries[] {
  return series.filter((one) => one !== undefined);
}

/** Two level lines at ± a limit, as wide as the series drawn; none without a limit. */
export function limitLines(limit: number | undefined, drawn: readonly PlotSeries[], what = 'Limit'): PlotSeries[] {
  const x = drawn.flatMap((series) => series.x);
  if (limit === undefined || x.length === 0) return [];
  const ends = [x.reduce((a, b) => Math.min(a, b)), x.reduce((a, b) => Math.max(a, b))];
  return [['upper', limit], ['lower', -limit]].map(([side, y]) => ({ name: `${what}, ${side}`, x: [...ends], y: [y as number, y as number], drawn: 'limit' }));
}

/** "Run 2"; of a single run, what the run is called. */
export function runName(block: Block, run: number): string {
  return block.runs.length === 1 ? block.label : `Run ${run + 1}`;
}
