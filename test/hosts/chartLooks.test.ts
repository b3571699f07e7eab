import { seriesLooks } from '../../src/hosts/chartLooks';

const looksOf = (...drawn: readonly ('points' | 'line' | 'both' | 'limit')[]) => seriesLooks(drawn.map((one) => ({ drawn: one })));

test('points have markers and no line, lines have no markers, and "both" has both', () => {
  const [points, line, both] = looksOf('points', 'line', 'both');
  expect([points.marker, points.line]).toEqual(['circle', undefined]);
  expect([line.marker, line.line]).toEqual([undefined, { width: 1.5, dashed: false }]);
  expect([both.marker, both.line]).toEqual(['diamond', { width: 1.5, dashed: false }]);
});

test('the first four series differ in colour and marker', () => {
  const looks = looksOf('points', 'points', 'points', 'points');
  expect(new Set(looks.map(({ color }) => color)).size).toBe(4);
  expect(new Set(looks.map(({ marker }) => marker)).size).toBe(4);
});

test('limits are dashed and take no turn among the colours', () => {
  const [limit, first] = looksOf('limit', 'points');
  expect(limit).toEqual({ color: '#a3201d', line: { width: 1, dashed: true } });
  expect(first).toEqual(looksOf('points')[0]);
});
