import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import type { PlotData } from '../../worksheets/plots/sheetPlots';
import { element } from '../dom';
import { type Colours, drawSeries } from './drawSeries';
import type { ReadPoint } from './points';

/** Pixels within which a pointer finds a point. */
const REACH = 28;

/** A plot drawn in an element. */
export interface Chart {
  /** Marks a point, or none. */
  mark(point: ReadPoint | undefined): void;
  /** Draws anew, as after a change of theme. */
  redraw(): void;
  resize(width: number): void;
  destroy(): void;
}

/** Colours of a chart that follow the theme. */
export interface ChartLooks {
  readonly series: Colours;
  readonly text: () => string;
  readonly line: () => string;
}

/** Draws a plot. `onPoint` is told which point the pointer is at, or that it is at none. */
export function createChart(root: HTMLElement, plot: PlotData, points: readonly ReadPoint[], looks: ChartLooks, width: number, onPoint: (point: ReadPoint | undefined) => void): Chart {
  const ring = element('div', { class: 'rp-ring', attributes: { hidden: '' } });
  const axis = { stroke: looks.text, font: '12px "Segoe UI", system-ui, "Liberation Sans", sans-serif', labelFont: '12px "Segoe UI", system-ui, "Liberation Sans", sans-serif' };
  const lines = { grid: { stroke: looks.line, width: 1 }, ticks: { stroke: looks.line, width: 1, size: 5 } };
  const chart = new uPlot({
    width,
    height: heightFor(width),
    legend: { show: false },
    cursor: { x: false, y: false, points: { show: false }, drag: { x: false, y: false } },
    scales: { x: { time: false, range: (_, least, greatest) => padded(least, greatest) }, y: { range: (_, least, greatest) => uPlot.rangeNum(least, greatest, 0.1, true) } },
    axes: [
      { ...axis, ...lines, label: plot.x, labelSize: 20, size: 30, space: 44 },
      { ...axis, ...lines, label: plot.y, labelSize: 20, size: (_, values) => sizeFor(values), space: 32 },
    ],
    series: [{}, { paths: () => null, points: { show: false } }],
    hooks: { draw: [(drawn) => drawSeries(drawn, plot, looks.series, uPlot.pxRatio)] },
  }, extent(plot), root);
  chart.over.append(ring);

  chart.over.addEventListener('pointermove', (event) => {
    const box = chart.over.getBoundingClientRect();
    onPoint(nearest(chart, points, event.clientX - box.left, event.clientY - box.top));
  });
  chart.over.addEventListener('pointerleave', () => onPoint(undefined));

  let marked: ReadPoint | undefined;
  const mark = (point: ReadPoint | undefined): void => {
    marked = point;
    ring.hidden = !point;
    if (point) ring.style.transform = `translate(${chart.valToPos(point.x, 'x')}px, ${chart.valToPos(point.y, 'y')}px)`;
  };
  return {
    mark,
    redraw: () => chart.redraw(false, true),
    resize: (wide) => {
      chart.setSize({ width: wide, height: heightFor(wide) });
      mark(marked);
    },
    destroy: () => chart.destroy(),
  };
}

function heightFor(width: number): number {
  return Math.round(Math.min(360, Math.max(220, width * 0.8)));
}

/** Room for the labels of an axis at the left, by their longest. */
function sizeFor(values: readonly string[] | null): number {
  return 14 + 7 * Math.max(2, ...(values ?? []).map(({ length }) => length));
}

/** The least and greatest of all series, as the data that the scales follow; runs may go up and down, which uPlot's own data cannot. */
function extent({ series }: PlotData): uPlot.AlignedData {
  const numbers = (values: readonly (number | null)[]): number[] => values.filter((value) => value !== null);
  const xs = series.flatMap(({ x }) => x);
  const ys = series.flatMap(({ y }) => numbers(y));
  return [[Math.min(...xs), Math.max(...xs)], [Math.min(...ys), Math.max(...ys)]];
}

function padded(least: number, greatest: number): [number, number] {
  const pad = (greatest - least) * 0.04 || 1;
  return [least - pad, greatest + pad];
}

function nearest(chart: uPlot, points: readonly ReadPoint[], left: number, top: number): ReadPoint | undefined {
  let found: ReadPoint | undefined;
  let closest = REACH;
  for (const point of points) {
    const distance = Math.hypot(chart.valToPos(point.x, 'x') - left, chart.valToPos(point.y, 'y') - top);
    if (distance < closest) [found, closest] = [point, distance];
  }
  return found;
}
