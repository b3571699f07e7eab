import {
  BasicPlatform, Chart, type ChartConfiguration, type ChartDataset, Legend, type LegendItem, LinearScale, LineElement, type Plugin, PointElement, type PointStyle,
  ScatterController, Title,
} from 'chart.js';
import type { ChartPlan } from '../../worksheets/plan';
import { MARKER_SIZE, type Marker, type SeriesLook, seriesLooks } from '../chartLooks';
import { FONT, INK, LINE, MUTED } from '../roleLooks';

Chart.register(ScatterController, LineElement, PointElement, LinearScale, Legend, Title);

const PIXELS_PER_POINT = 96 / 72;
const SMALL = { family: FONT, size: 12 };
const DASHES = [5, 4];
/** Short enough for two dashes in the legend. */
const LEGEND_DASHES = [4, 3];
const STYLES: Readonly<Record<Marker, PointStyle>> = { circle: 'circle', square: 'rect', diamond: 'rectRot', triangle: 'triangle' };

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a chart shows at the moment. */
export interface ChartContent {
  readonly plan: ChartPlan;
  /** The points of each series; a pair that is no two numbers is a gap, with NaN. */
  readonly points: readonly (readonly Point[])[];
  /** Number formats of the two axes; general if omitted. */
  readonly formats: { readonly x?: string; readonly y?: string };
}

/** How large a chart is drawn, and with which colours. */
export interface ChartFrame {
  readonly width: number;
  readonly height: number;
  /** Dots of the screen a pixel. */
  readonly scale: number;
  /** The colour behind it. */
  readonly ground: string;
  /** The colour that stands for one of the house in the theme of the page. */
  readonly color: (house: string) => string;
  /** A number as the number format has it. */
  readonly format: (value: number, pattern: string) => string;
}

/** Draws a chart on a canvas of its own. */
export function chartPicture(content: ChartContent, frame: ChartFrame): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = frame.width;
  canvas.height = frame.height;
  new Chart(canvas, configuration(content, frame)).stop();
  return canvas;
}

function configuration(content: ChartContent, frame: ChartFrame): ChartConfiguration<'scatter'> {
  const { plan, points, formats } = content;
  const looks = seriesLooks(plan.series);
  const { color } = frame;
  const isEmpty = !points.some((series, i) => plan.series[i].drawn !== 'limit' && series.some(isPoint));
  const hasPoints = points.some((series) => series.some(isPoint));
  return {
    type: 'scatter',
    data: { datasets: plan.series.map(({ name }, i) => dataset(name, points[i], looks[i], color)) },
    plugins: [paper(frame.ground, color(LINE)), ...(isEmpty ? [words('No readings yet', color(MUTED))] : [])],
    platform: BasicPlatform,
    options: {
      responsive: false,
      animation: false,
      events: [],
      devicePixelRatio: frame.scale,
      layout: { padding: { top: 4, right: 14, bottom: 6, left: 8 } },
      scales: {
        x: axis(plan.x, hasPoints, frame, formats.x),
        // Limits stand off from the edges.
        y: { ...axis(plan.y, hasPoints, frame, formats.y), grace: '5%' },
      },
      plugins: {
        title: { display: true, text: plan.title, color: color(INK), font: { family: FONT, size: 15, weight: 'bold' }, padding: { top: 4, bottom: 8 } },
        legend: { position: 'bottom', labels: { font: SMALL, usePointStyle: true, boxHeight: 8, padding: 14, generateLabels: () => legend(plan, looks, color) } },
      },
    },
  };
}

function dataset(label: string, points: readonly Point[], look: SeriesLook, color: ChartFrame['color']): ChartDataset<'scatter'> {
  const ink = color(look.color);
  const { marker, line } = look;
  return {
    label,
    data: [...points],
    borderColor: ink,
    backgroundColor: ink,
    showLine: line !== undefined,
    borderWidth: (line?.width ?? 0) * PIXELS_PER_POINT,
    borderDash: line?.dashed ? DASHES : [],
    pointStyle: marker ? STYLES[marker] : false,
    pointRadius: marker ? (MARKER_SIZE / 2) * PIXELS_PER_POINT : 0,
    pointBorderWidth: 1,
  };
}

function axis(name: string, hasTicks: boolean, { color, format }: ChartFrame, pattern?: string) {
  return {
    title: { display: true, text: name, color: color(INK), font: SMALL },
    grid: { color: color('#e9edef') },
    border: { color: color(MUTED) },
    ticks: {
      display: hasTicks,
      color: color(INK),
      font: SMALL,
      maxRotation: 0,
      ...(pattern ? { callback: (value: number | string) => format(Number(value), pattern) } : {}),
    },
  };
}

/** A line is shown as a short piece of it, all else by its marker. */
function legend({ series }: ChartPlan, looks: readonly SeriesLook[], color: ChartFrame['color']): LegendItem[] {
  return series.map(({ name }, i) => {
    const { marker, line } = looks[i];
    const ink = color(looks[i].color);
    return {
      text: name,
      fontColor: color(INK),
      fillStyle: ink,
      strokeStyle: ink,
      pointStyle: marker ? STYLES[marker] : 'line',
      lineWidth: marker ? 1 : (line?.width ?? 1) * PIXELS_PER_POINT,
      lineDash: !marker && line?.dashed ? LEGEND_DASHES : [],
    };
  });
}

/** The ground, with a thin edge. */
function paper(fill: string, edge: string): Plugin<'scatter'> {
  return {
    id: 'paper',
    beforeDraw: ({ ctx, width, height }) => {
      ctx.save();
      ctx.fillStyle = fill;
      ctx.fillRect(0, 0, width, height);
      ctx.strokeStyle = edge;
      ctx.strokeRect(0.5, 0.5, width - 1, height - 1);
      ctx.restore();
    },
  };
}

/** Words in the middle, where points would be. */
function words(text: string, color: string): Plugin<'scatter'> {
  return {
    id: 'words',
    afterDraw: ({ ctx, chartArea: { left, right, top, bottom } }) => {
      ctx.save();
      ctx.fillStyle = color;
      ctx.font = `italic 14px ${FONT}`;
      ctx.textAlign = 'center';
      ctx.textBaseline = 'middle';
      ctx.fillText(text, (left + right) / 2, (top + bottom) / 2);
      ctx.restore();
    },
  };
}

function isPoint({ x, y }: Point): boolean {
  return Number.isFinite(x) && Number.isFinite(y);
}
