import { nextPoint, pointsOf, pointWords } from '../../../src/taskpane/plot/points';
import type { PlotData } from '../../../src/worksheets/plots/sheetPlots';

/** A run up and down, a shorter one with a gap, and a limit. */
const PLOT: PlotData = {
  id: 'dev', title: 'Deviation', x: 'Force, kN', y: 'Deviation, % of RO',
  series: [
    { name: 'Run 1', x: [0, 10, 20, 10, 0], y: [0, 1, 2, 1.5, 0.5], drawn: 'both' },
    { name: 'Run 2', x: [0, 10, 20], y: [0, null, 3], drawn: 'points' },
    { name: 'Limit', x: [0, 20], y: [5, 5], drawn: 'limit' },
  ],
};
const points = pointsOf(PLOT);
const at = (series: number, index: number) => points.find((point) => point.series === series && point.index === index)!;

test('gaps and limits are no points to read', () => {
  expect(points.map(({ series, index }) => [series, index])).toEqual([[0, 0], [0, 1], [0, 2], [0, 3], [0, 4], [1, 0], [1, 2]]);
});

test.each([
  ['ArrowRight', [0, 1], [0, 2]], ['ArrowRight', [0, 4], [0, 4]], ['ArrowRight', [1, 0], [1, 2]],
  ['ArrowLeft', [0, 3], [0, 2]], ['ArrowLeft', [0, 0], [0, 0]], ['Home', [0, 3], [0, 0]], ['End', [1, 0], [1, 2]],
  ['ArrowDown', [0, 2], [1, 2]], ['ArrowUp', [0, 2], [1, 2]], ['ArrowUp', [1, 2], [0, 2]], ['ArrowDown', [1, 0], [0, 0]],
])('%s from point %j goes to %j', (key, from, to) => {
  expect(nextPoint(points, at(from[0], from[1]), key)).toBe(at(to[0], to[1]));
});

test('the first key goes to the first point', () => {
  expect(nextPoint(points, undefined, 'ArrowLeft')).toBe(points[0]);
});

test('a plot without points has none to go to', () => {
  expect(nextPoint([], undefined, 'ArrowRight')).toBeUndefined();
});

test('a point is told with series, and values with their units', () => {
  expect(pointWords(PLOT, at(0, 3))).toBe('Run 1: Force 10 kN, Deviation 1.5 % of RO');
});

test('a label without a unit is told as it is', () => {
  expect(pointWords({ ...PLOT, x: 'Reading' }, at(0, 0))).toBe('Run 1: Reading 0, Deviation 0 % of RO');
});
