import type { ChartSeries } from '../worksheets/plan';
import { AMBER, MUTED, RED, TEAL } from './roleLooks';

/** How a series of a chart is drawn. */
export interface SeriesLook {
  readonly color: string;
  /** Shape of its points; none if undefined. */
  readonly marker?: Marker;
  /** Its line, with the width in points; none if undefined. */
  readonly line?: { readonly width: number; readonly dashed: boolean };
}

export type Marker = 'circle' | 'square' | 'diamond' | 'triangle';

/** Size of a marker, in points. */
export const MARKER_SIZE = 6;

/** Each series has a colour and a marker of its own, so that it is told apart without colour too. */
const COLORS = [TEAL, AMBER, '#3b4d8f', MUTED];
const MARKERS: readonly Marker[] = ['circle', 'square', 'diamond', 'triangle'];

/** The looks of the series of one chart, in their order. Limits stand apart and take no turn. */
export function seriesLooks(series: readonly Pick<ChartSeries, 'drawn'>[]): SeriesLook[] {
  let turn = 0;
  return series.map(({ drawn }) => {
    if (drawn === 'limit') return { color: RED, line: { width: 1, dashed: true } };
    const color = COLORS[turn % COLORS.length];
    const marker = MARKERS[turn % MARKERS.length];
    turn += 1;
    return {
      color,
      ...(drawn !== 'line' && { marker }),
      ...(drawn !== 'points' && { line: { width: 1.5, dashed: false } }),
    };
  });
}
