import {
  Chart, ChartFont, ChartFormat, ChartLegendPosition, ChartLine, ChartLineDashType, ChartMarker, ChartMarkerType, ChartRange,
  ChartSeries, ChartSolidFill, ChartType, Color, type Worksheet,
} from 'wasm-xlsxwriter';
import type { ChartPlan, ChartSeries as SeriesPlan, SheetPlan } from '../../worksheets/plan';
import { rangeOf } from '../address';
import { MARKER_SIZE, type Marker, type SeriesLook, seriesLooks } from '../chartLooks';
import { FONT, INK } from '../roleLooks';
import { ROW_HEIGHT, rowHeights, widthOf } from '../sheetLayout';

const MARKERS: Readonly<Record<Marker, ChartMarkerType>> =
  { circle: ChartMarkerType.Circle, square: ChartMarkerType.Square, diamond: ChartMarkerType.Diamond, triangle: ChartMarkerType.Triangle };

/** Puts the charts of a plan on its sheet, each over its range. */
export function addCharts(sheet: Worksheet, plan: SheetPlan): void {
  if (!plan.charts) return;
  const heights = rowHeights(plan);
  for (const chart of plan.charts) {
    const { startRow, endRow, startColumn, endColumn } = rangeOf(chart.over);
    let height = 0;
    for (let row = startRow; row <= endRow; row += 1) height += heights.get(row) ?? ROW_HEIGHT;
    const drawn = chartOf(chart, plan.name);
    const dates = dateFormat(plan, chart);
    if (dates !== undefined) drawn.xAxis().setNumFormat(dates);
    drawn.setWidth(widthOf(plan, startColumn, endColumn));
    drawn.setHeight(height);
    sheet.insertChart(startRow, startColumn, drawn);
  }
}

/** The format of the x values, if they are dates: without it some programs show their serial numbers. */
function dateFormat({ cells }: SheetPlan, { series }: ChartPlan): string | undefined {
  const first = series[0]?.x.split(':')[0];
  const format = cells.find(({ at }) => at === first)?.format;
  return format?.includes('yy') ? format : undefined;
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
  const looks = seriesLooks(plan.series);
  plan.series.forEach((series, i) => chart.pushSeries(seriesOf(series, sheet, looks[i])));
  return chart;
}

function seriesOf({ name, x, y }: SeriesPlan, sheet: string, { color, marker, line }: SeriesLook): ChartSeries {
  const ink = Color.parse(color);
  return new ChartSeries()
    .setName(name)
    .setCategories(chartRange(sheet, x))
    .setValues(chartRange(sheet, y))
    .setFormat(line ? new ChartFormat().setLine(lineOf(line, ink)) : new ChartFormat().setNoLine())
    .setMarker(marker ? markerOf(MARKERS[marker], ink) : new ChartMarker().setNone());
}

function lineOf({ width, dashed }: NonNullable<SeriesLook['line']>, color: Color): ChartLine {
  const line = new ChartLine().setColor(color).setWidth(width);
  return dashed ? line.setDashType(ChartLineDashType.Dash) : line;
}

function markerOf(type: ChartMarkerType, color: Color): ChartMarker {
  const look = new ChartFormat().setSolidFill(new ChartSolidFill().setColor(color)).setBorder(new ChartLine().setColor(color));
  return new ChartMarker().setType(type).setSize(MARKER_SIZE).setFormat(look);
}

function chartRange(sheet: string, range: string): ChartRange {
  const { startRow, startColumn, endRow, endColumn } = rangeOf(range);
  return ChartRange.newFromRange(sheet, startRow, startColumn, endRow, endColumn);
}

function font(size: number): ChartFont {
  return new ChartFont().setName(FONT).setSize(size).setColor(Color.parse(INK));
}
