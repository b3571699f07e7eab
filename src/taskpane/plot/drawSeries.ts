import type uPlot from 'uplot';
import type { PlotData, PlotSeries } from '../../worksheets/plots/sheetPlots';
import { MARKERS } from './markers';

/** Half-width of a mark, CSS pixels. */
const MARK = 4;

/** What series are drawn with: a colour each, as the legend has it. */
export type Colours = (series: number) => string;

/** Draws the series over the axes of a chart: lines, marks, and limits dashed. */
export function drawSeries(chart: uPlot, plot: PlotData, colourOf: Colours, ratio: number): void {
  const { ctx, bbox } = chart;
  ctx.save();
  ctx.beginPath();
  // Marks at the edge of the plot are shown whole.
  ctx.rect(bbox.left - 2 * MARK * ratio, bbox.top - 2 * MARK * ratio, bbox.width + 4 * MARK * ratio, bbox.height + 4 * MARK * ratio);
  ctx.clip();
  drawBands(chart, plot, colourOf(plot.series.length - 1));
  plot.series.forEach((series, i) => {
    ctx.strokeStyle = colourOf(i);
    ctx.fillStyle = colourOf(i);
    if (series.drawn !== 'points') drawLine(chart, series, ratio);
    if (series.drawn === 'points' || series.drawn === 'both') drawMarks(chart, series, MARKERS[i % MARKERS.length], ratio);
  });
  ctx.restore();
}

/** Shades the stretches of x, in the colour of the last series, which marks them. */
function drawBands({ ctx, bbox, valToPos }: uPlot, { bands = [] }: PlotData, colour: string): void {
  ctx.fillStyle = colour;
  ctx.globalAlpha = 0.18;
  for (const { from, to } of bands) {
    const [left, right] = [valToPos(from, 'x', true), valToPos(to, 'x', true)];
    ctx.fillRect(left, bbox.top, Math.max(1, right - left), bbox.height);
  }
  ctx.globalAlpha = 1;
}

function drawLine(chart: uPlot, { x, y, drawn }: PlotSeries, ratio: number): void {
  const { ctx } = chart;
  ctx.beginPath();
  ctx.lineWidth = (drawn === 'limit' ? 1.5 : 1.75) * ratio;
  ctx.setLineDash(drawn === 'limit' ? [6 * ratio, 4 * ratio] : []);
  let joined = false;
  x.forEach((value, i) => {
    const output = y[i];
    const exists = output !== null && output !== undefined;
    if (exists) {
      const [px, py] = [chart.valToPos(value, 'x', true), chart.valToPos(output, 'y', true)];
      if (joined) ctx.lineTo(px, py);
      else ctx.moveTo(px, py);
    }
    joined = exists;
  });
  ctx.stroke();
  ctx.setLineDash([]);
}

function drawMarks(chart: uPlot, { x, y }: PlotSeries, marker: (typeof MARKERS)[number], ratio: number): void {
  const { ctx } = chart;
  ctx.beginPath();
  x.forEach((value, i) => {
    const output = y[i];
    if (output !== null && output !== undefined) marker(ctx, chart.valToPos(value, 'x', true), chart.valToPos(output, 'y', true), MARK * ratio);
  });
  ctx.fill();
}
