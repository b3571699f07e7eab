import type { ChartPlan, ChartSeries, SheetPlan } from '../../worksheets/plan';
import { rangeOf } from '../address';
import { MARKER_SIZE, type Marker, type SeriesLook, seriesLooks } from '../chartLooks';
import { FONT, INK, LINE } from '../roleLooks';

const MARKERS: Readonly<Record<Marker, 'Circle' | 'Square' | 'Diamond' | 'Triangle'>> =
  { circle: 'Circle', square: 'Square', diamond: 'Diamond', triangle: 'Triangle' };

/** Puts the charts of a plan on its sheet, each over its range. */
export function addCharts(sheet: Excel.Worksheet, plan: SheetPlan): void {
  for (const chart of plan.charts ?? []) addChart(sheet, chart);
}

function addChart(sheet: Excel.Worksheet, plan: ChartPlan): void {
  const [first, ...others] = plan.series;
  if (!first) throw new Error(`${plan.over}: found a chart without series; expected at least one`);
  const looks = seriesLooks(plan.series);
  // Excel makes one series of a single line of cells: that is the first; the others are added.
  const { startRow, endRow } = rangeOf(first.y);
  const chart = sheet.charts.add('XYScatter', sheet.getRange(first.y), endRow > startRow ? 'Columns' : 'Rows');
  chart.setPosition(...corners(plan.over));
  setSeries(sheet, chart.series.getItemAt(0), first, looks[0]);
  others.forEach((series, i) => setSeries(sheet, chart.series.add(), series, looks[i + 1]));
  setText(chart, plan);
}

/** First and last cell of a range. */
function corners(range: string): [first: string, last: string] {
  const [first, last = first] = range.split(':');
  return [first, last];
}

function setSeries(sheet: Excel.Worksheet, series: Excel.ChartSeries, { name, x, y }: ChartSeries, { color, marker, line }: SeriesLook): void {
  series.name = name;
  series.setXAxisValues(sheet.getRange(x));
  series.setValues(sheet.getRange(y));
  // The kind says whether there is a line and whether there are markers; "None" as a style is refused by some versions.
  series.chartType = line ? (marker ? 'XYScatterLines' : 'XYScatterLinesNoMarkers') : 'XYScatter';
  if (marker) {
    series.markerStyle = MARKERS[marker];
    series.markerSize = MARKER_SIZE;
    series.markerBackgroundColor = color;
    series.markerForegroundColor = color;
  }
  if (line) {
    series.format.line.color = color;
    series.format.line.weight = line.width;
    if (line.dashed) series.format.line.lineStyle = 'Dash';
  }
}

function setText(chart: Excel.Chart, plan: ChartPlan): void {
  chart.format.font.name = FONT;
  chart.format.font.size = 9;
  chart.format.font.color = INK;
  chart.title.text = plan.title;
  chart.title.format.font.size = 12;
  chart.title.format.font.bold = true;
  chart.legend.visible = true;
  chart.legend.position = 'Bottom';
  const { categoryAxis, valueAxis } = chart.axes;
  categoryAxis.title.text = plan.x;
  valueAxis.title.text = plan.y;
  // Numbers of an axis stay at the edge where values go below zero.
  categoryAxis.tickLabelPosition = 'Low';
  valueAxis.tickLabelPosition = 'Low';
  // Grid lines stand back behind the data.
  categoryAxis.majorGridlines.visible = false;
  valueAxis.majorGridlines.visible = true;
  valueAxis.majorGridlines.format.line.color = LINE;
}
