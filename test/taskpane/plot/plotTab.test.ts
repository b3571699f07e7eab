/** @jest-environment jsdom */
import type { SheetContent } from '../../../src/hosts/sheetHost';
import { createChart } from '../../../src/taskpane/plot/chart';
import { isRun } from '../../../src/taskpane/check/isRun';
import { PlotTab } from '../../../src/taskpane/plot/plotTab';
import type { ReadPoint } from '../../../src/taskpane/plot/points';
import type { PlotData } from '../../../src/worksheets/plots/sheetPlots';

// jsdom has no canvas; the drawing itself is seen in the browser suite.
const chart = { mark: jest.fn(), redraw: jest.fn(), resize: jest.fn(), destroy: jest.fn() };
jest.mock('../../../src/taskpane/plot/chart', () => ({ createChart: jest.fn(() => chart) }));
HTMLCanvasElement.prototype.getContext = () => null;
Object.assign(globalThis, {
  ResizeObserver: class { observe(): void {} },
  matchMedia: () => ({ addEventListener: jest.fn() }),
});

const CONTENT: SheetContent = { name: 'Run', cells: [], merges: [], names: [{ name: 'readings_tension', range: 'B5:C6' }] };
const DEVIATION: PlotData = {
  id: 'dev', title: 'Deviation', x: 'Force, kN', y: 'Deviation, % of RO',
  series: [
    { name: 'Run 1', x: [0, 10], y: [0, 0.5], drawn: 'both' },
    { name: 'Run 2', x: [0, 10], y: [0, null], drawn: 'both' },
    { name: 'Upper limit', x: [0, 20], y: [1, 1], drawn: 'limit' },
  ],
};
const CREEP: PlotData = { id: 'creep', title: 'Creep', x: 'Time, min', y: 'Creep, % of RO', series: [{ name: 'Loaded', x: [0], y: [0], drawn: 'line' }] };

function mounted(first: readonly PlotData[]) {
  let plots = first;
  const tab = new PlotTab({ plots: () => plots, isRun });
  document.body.replaceChildren(tab.element);
  tab.show(CONTENT);
  const one = <T extends HTMLElement>(selector: string): T => tab.element.querySelector<T>(selector)!;
  const drawn = (): string => (jest.mocked(createChart).mock.lastCall as unknown as [unknown, PlotData])[1].title;
  const press = (key: string): void => { one('.rp-stage').dispatchEvent(new KeyboardEvent('keydown', { key, cancelable: true })); };
  return { tab, one, drawn, press, change: (next: readonly PlotData[]) => { plots = next; tab.show(CONTENT); } };
}

beforeEach(() => jest.clearAllMocks());

test('the first plot is drawn, and the others are offered', () => {
  const { one, drawn } = mounted([DEVIATION, CREEP]);
  expect(drawn()).toBe('Deviation');
  expect([...one<HTMLSelectElement>('select').options].map(({ text }) => text)).toEqual(['Deviation', 'Creep']);
  expect(one<HTMLSelectElement>('select').labels?.[0].textContent).toBe('Plot');
});

test('the one chosen is drawn, and stays chosen when readings change', () => {
  const { one, drawn, change } = mounted([DEVIATION, CREEP]);
  one<HTMLSelectElement>('select').value = 'creep';
  one('select').dispatchEvent(new Event('change'));
  expect(drawn()).toBe('Creep');
  change([DEVIATION, { ...CREEP, series: [{ ...CREEP.series[0], y: [0.1] }] }]);
  expect(drawn()).toBe('Creep');
  expect(chart.destroy).toHaveBeenCalledTimes(2);
});

test('what did not change is not drawn anew', () => {
  const { change } = mounted([DEVIATION]);
  change([{ ...DEVIATION }]);
  expect(createChart).toHaveBeenCalledTimes(1);
});

test('arrow keys read values, aloud and in a line', () => {
  const { press, one } = mounted([DEVIATION]);
  press('ArrowRight');
  press('ArrowRight');
  expect(one('.rp-reading').textContent).toBe('Run 1: Force 10 kN, Deviation 0.5 % of RO');
  expect(one('.rp-unseen[role=status]').textContent).toBe('Run 1: Force 10 kN, Deviation 0.5 % of RO');
  expect(chart.mark).toHaveBeenLastCalledWith({ series: 0, index: 1, x: 10, y: 0.5 });
});

test('the pointer reads values in the line alone: a screen reader is left in peace', () => {
  const { one } = mounted([DEVIATION]);
  const onPoint = (jest.mocked(createChart).mock.lastCall as unknown[])[5] as (point?: ReadPoint) => void;
  onPoint({ series: 1, index: 0, x: 0, y: 0 });
  expect(one('.rp-reading').textContent).toBe('Run 2: Force 0 kN, Deviation 0 % of RO');
  expect(one('.rp-unseen[role=status]').textContent).toBe('');
  onPoint(undefined);
  expect(one('.rp-reading').textContent).toContain('arrow keys');
});

test('the point that is read is still read after an edit, with its new value', () => {
  const { press, one, change } = mounted([DEVIATION]);
  press('ArrowRight');
  press('ArrowRight');
  change([{ ...DEVIATION, series: [{ ...DEVIATION.series[0], y: [0, 0.7] }, ...DEVIATION.series.slice(1)] }]);
  expect(one('.rp-reading').textContent).toContain('0.7 % of RO');
});

test('as a table, series with the same points share one, and a gap is a dash', () => {
  const { one, tab } = mounted([DEVIATION]);
  const toggle = [...tab.element.querySelectorAll('button')].find(({ textContent }) => textContent === 'Show as table')!;
  toggle.click();
  expect(toggle.getAttribute('aria-pressed')).toBe('true');
  const tables = [...one('.rp-plot-table').querySelectorAll('table')].map((table) => [...table.rows].map((row) => [...row.cells].map(({ textContent }) => textContent)));
  expect(tables).toEqual([
    [['Force, kN', 'Run 1', 'Run 2'], ['0', '0', '0'], ['10', '0.5', '–']],
    [['Force, kN', 'Upper limit'], ['0', '1'], ['20', '1']],
  ]);
  toggle.click();
  expect(one('.rp-plot-table').parentElement!.hidden).toBe(true);
});

test('a limit is told as such by more than its colour', () => {
  const { one } = mounted([DEVIATION]);
  expect([...one('.rp-legend').children].map(({ textContent }) => textContent)).toEqual(['Run 1', 'Run 2', 'Upper limit (dashed)']);
});

test('a sheet without run readings is not plotted, and says so', () => {
  const { tab, one } = mounted([DEVIATION]);
  tab.show({ ...CONTENT, names: [] });
  expect(one('[role=status]').textContent).toBe('This sheet has no run readings, so there is nothing to plot.');
  expect(one('.rp-stage').closest('[hidden]')).not.toBeNull();
});

test('a sheet without readings yet says what the plots wait for', () => {
  const { one, change, tab } = mounted([]);
  expect(one('[role=status]').textContent).toBe('Nothing to plot yet: the plots come with the readings.');
  expect(createChart).not.toHaveBeenCalled();
  change([DEVIATION]);
  expect(tab.element.querySelector('[role=status]')!.textContent).toBe('');
  expect(createChart).toHaveBeenCalledTimes(1);
});
