import {
  Chart, ChartFont, ChartFormat, ChartLegendPosition, ChartLine, ChartLineDashType, ChartMarker, ChartMarkerType, ChartRange,
  ChartSeries, ChartSolidFill, ChartType, Color, type Worksheet,
} from 'wasm-xlsxwriter';
import type { ChartPlan, ChartSeries as SeriesPlan, SheetPlan } from '../../worksheets/plan';
import { rangeOf } from '../address';
import { AMBER, FONT, INK, MUTED, RED, TEAL } from '../roleLooks';
import { ROW_HEIGHT, rowHeights, widthOf } from '../sheetLayout';

/** Each series has a colour and a marker of its own, so that it is told apart without colour too. */
const COLORS = [TEAL, AMBER, '#3b4d8f', MUTED];
const MARKERS = [ChartMarkerType.Circle, ChartMarkerType.Square, ChartMarkerType.Diamond, ChartMarkerType.Triangle];

/** Puts the charts of a plan on its sheet, each over its range. */
export function addCharts(sheet: Worksheet, plan: SheetPlan): void {
  if (!plan.charts) return;
  const heights = rowHeights(plan);
  for (const chart of plan.charts) {
    const { startRow, endRow, startColumn, endColumn } = rangeOf(chart.over);
    let height = 0;
    for (let row = startRow; row <= endRow; row += 1) height += heights.get(row) ?? ROW_HEIGHT;
    const drawn = chartOf(chart, plan.name);
    drawn.setWidth(widthOf(plan, startColumn, endColumn));
    drawn.setHeight(height);
    sheet.insertChart(startRow, startColumn, drawn);
  }
}

function chartOf(plan: ChartPlan, sheet: string): Chart {
  const chart = new Chart(ChartType.ScatterStraightWithMarkers);
  chart.setAltText(`${plan.title}: ${plan.y} against ${plan.x}`);
  chart.title().setName(plan.title);
  chart.title().setFont(font(12).setBold());
  for (const [axis, name] of [[chart.xAxis(), plan.x], [chart.yAxis(), plan.y]] as const) {
    axis.setName(name);
    axis.setNameFont(font(9).unsetBold());
    axis.setFont(font(9));
  }
  chart.legend().setPosition(ChartLegendPosition.Bottom);
  chart.legend().setFont(font(9));
  let drawn = 0;
  for (const series of plan.series) {
    chart.pushSeries(seriesOf(series, sheet, drawn));
    if (series.drawn !== 'limit') drawn += 1;
  }
  return chart;
}

function seriesOf({ name, x, y, drawn }: SeriesPlan, sheet: string, index: number): ChartSeries {
  const color = Color.parse(drawn === 'limit' ? RED : COLORS[index % COLORS.length]);
  const marked = drawn === 'points' || drawn === 'both';
  return new ChartSeries()
    .setName(name)
    .setCategories(chartRange(sheet, x))
    .setValues(chartRange(sheet, y))
    .setFormat(drawn === 'points' ? new ChartFormat().setNoLine() : new ChartFormat().setLine(lineOf(drawn, color)))
    .setMarker(marked ? markerOf(MARKERS[index % MARKERS.length], color) : new ChartMarker().setNone());
}

function lineOf(drawn: SeriesPlan['drawn'], color: Color): ChartLine {
  const line = new ChartLine().setColor(color);
  return drawn === 'limit' ? line.setWidth(1).setDashType(ChartLineDashType.Dash) : line.setWidth(1.5);
}

function markerOf(type: ChartMarkerType, color: Color): ChartMarker {
  const look = new ChartFormat().setSolidFill(new ChartSolidFill().setColor(color)).setBorder(new ChartLine().setColor(color));
  return new ChartMarker().setType(type).setSize(6).setFormat(look);
}

function chartRange(sheet: string, range: string): ChartRange {
  const { startRow, startColumn, endRow, endColumn } = rangeOf(range);
  return ChartRange.newFromRange(sheet, startRow, startColumn, endRow, endColumn);
}

function font(size: number): ChartFont {
  return new ChartFont().setName(FONT).setSize(size).setColor(Color.parse(INK));
}
