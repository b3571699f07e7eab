import { rangeOf } from '../../../src/hosts/address';
import type { FakeExcel } from './fakeExcel';
import { settable } from './fakeProxy';
import { type FakeSheet, refusal } from './fakeState';

type Bag = Record<string, unknown>;
type Chart = FakeSheet['charts'][number];
interface RangeObject { readonly fakeAddress: () => string }

/** The charts of a sheet. As in Excel, a new one makes a series of each column (or row) of its source. */
export function chartsObject(excel: FakeExcel, open: () => FakeSheet): object {
  return {
    add: (type: string, source: RangeObject, by: string) => {
      let chart: Chart | undefined;
      excel.ask('ChartCollection.add', () => {
        const { startRow, endRow, startColumn, endColumn } = rangeOf(source.fakeAddress());
        const count = by === 'Columns' ? endColumn - startColumn + 1 : endRow - startRow + 1;
        chart = { type, by, props: {}, series: Array.from({ length: count }, () => ({})) };
        open().charts.push(chart);
      });
      return chartObject(excel, () => {
        if (!chart) throw refusal('ItemNotFound');
        return chart;
      });
    },
  };
}

function chartObject(excel: FakeExcel, chart: () => Chart): object {
  return settable(excel, 'Chart', () => chart().props, {
    setPosition: (first: string, last: string) => excel.ask('Chart.setPosition', () => { chart().place = `${first}:${last}`; }),
    series: {
      getItemAt: (index: number) => seriesObject(excel, 'ChartSeriesCollection.getItemAt', () => {
        if (!chart().series[index]) throw refusal('InvalidArgument');
        return chart().series[index];
      }),
      add: () => seriesObject(excel, 'ChartSeriesCollection.add', () => {
        const series: Bag = {};
        chart().series.push(series);
        return series;
      }),
    },
  });
}

function seriesObject(excel: FakeExcel, words: string, find: () => Bag): object {
  let series: Bag = {};
  excel.ask(words, () => { series = find(); });
  const take = (name: string) => (range: RangeObject): void => excel.ask(`ChartSeries.${name}`, () => { series[name] = range.fakeAddress(); });
  return settable(excel, 'ChartSeries', () => series, { setXAxisValues: take('x'), setValues: take('y') });
}
