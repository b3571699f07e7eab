import type { PlotData } from '../../worksheets/plots/sheetPlots';

/** A point that can be read: where it belongs, and its place. */
export interface ReadPoint {
  readonly series: number;
  readonly index: number;
  readonly x: number;
  readonly y: number;
}

/** Every point of a plot that has a value, series by series, in the order of the data. Limits are lines, not readings. */
export function pointsOf(plot: PlotData): readonly ReadPoint[] {
  return plot.series.flatMap(({ drawn, x, y }, series) => (drawn === 'limit' ? [] : x.flatMap((value, index) => {
    const output = y[index];
    return output === null || output === undefined ? [] : [{ series, index, x: value, y: output }];
  })));
}

/** The point that an arrow key goes to: left and right along a series, up and down to the nearest one of another. */
export function nextPoint(points: readonly ReadPoint[], from: ReadPoint | undefined, key: string): ReadPoint | undefined {
  if (!from) return points[0];
  const own = points.filter(({ series }) => series === from.series);
  const at = own.findIndex(({ index }) => index === from.index);
  switch (key) {
    case 'ArrowRight': return own[Math.min(at + 1, own.length - 1)];
    case 'ArrowLeft': return own[Math.max(at - 1, 0)];
    case 'Home': return own[0];
    case 'End': return own[own.length - 1];
    case 'ArrowDown': return inNeighbour(points, from, 1);
    case 'ArrowUp': return inNeighbour(points, from, -1);
    default: return undefined;
  }
}

function inNeighbour(points: readonly ReadPoint[], from: ReadPoint, step: 1 | -1): ReadPoint {
  const present = [...new Set(points.map(({ series }) => series))];
  const neighbour = present[(present.indexOf(from.series) + step + present.length) % present.length];
  const there = points.filter(({ series }) => series === neighbour);
  return there.reduce((best, point) => (distance(point, from) < distance(best, from) ? point : best));
}

/** By force first; among equal ones, as in a run up and down, by place in the run. */
function distance(a: ReadPoint, b: ReadPoint): number {
  return Math.abs(a.x - b.x) + Math.abs(a.index - b.index) * 1e-9 * Math.max(1, Math.abs(b.x));
}

/** A point in words: "Run 1: Force 10 kN, Deviation 0.012 % of RO". */
export function pointWords(plot: PlotData, { series, x, y }: ReadPoint): string {
  return `${plot.series[series].name}: ${withUnit(plot.x, x)}, ${withUnit(plot.y, y)}`;
}

/** Puts a value into the label of its axis, which ends in its unit: "Force, kN" → "Force 10 kN". */
function withUnit(label: string, value: number): string {
  const [, name, unit] = /^(.*),\s*([^,]*)$/.exec(label) ?? [label, label, ''];
  return `${name} ${shown(value)} ${unit}`.trimEnd();
}

/** A number in the user's locale, to six digits. */
export function shown(value: number): string {
  return value.toLocaleString(undefined, { maximumSignificantDigits: 6 });
}
