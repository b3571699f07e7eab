import fc from 'fast-check';
import { pairRows } from '../../../src/worksheets/comparison/pairRows';

const UP_AND_DOWN = [0, 5, 10, 20, 10, 5, 0];

describe('points of two runs', () => {
  test('of one order meet row by row', () => {
    expect(pairRows(UP_AND_DOWN, UP_AND_DOWN)).toEqual([0, 1, 2, 3, 4, 5, 6]);
  });

  test('of which one has no way down: those on the way down are left alone', () => {
    expect(pairRows(UP_AND_DOWN, [0, 5, 10, 20])).toEqual([0, 1, 2, 3, undefined, undefined, undefined]);
    expect(pairRows([0, 5, 10, 20], UP_AND_DOWN)).toEqual([0, 1, 2, 3]);
  });

  test('a run from the greatest force downwards meets one upwards by load', () => {
    expect(pairRows([0, 10, 20], [20, 10, 0])).toEqual([2, 1, 0]);
  });

  test('a load that only one of them has is left alone', () => {
    expect(pairRows([0, 5, 10, 20, 0], [0, 10, 20, 0])).toEqual([0, undefined, 1, 2, 3]);
  });

  test('typed loads that are off by a little meet the nearest', () => {
    expect(pairRows([0, -9.98, -20.01], [0, -10.03, -19.99])).toEqual([0, 1, 2]);
    expect(pairRows([0, 10, 10.2, 20], [0, 10.19, 10.01, 20])).toEqual([0, 2, 1, 3]);
  });

  test('loads of the other direction do not meet', () => {
    expect(pairRows([0, 10, 20], [0, -10, -20])).toEqual([0, undefined, undefined]);
  });

  test('where loads are not known yet, go by their order', () => {
    expect(pairRows([undefined, undefined, undefined], [0, 10])).toEqual([0, 1, undefined]);
    expect(pairRows([0, 0], [0, 0, 0])).toEqual([0, 1]);
  });

  test('no point is taken twice, and every load of a run shuffled is found again', () => {
    const loads = fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 12 });
    fc.assert(fc.property(loads.chain((list) => fc.tuple(fc.constant(list), fc.shuffledSubarray(list, { minLength: list.length }))), ([one, other]) => {
      const scaled = (list: readonly number[]) => list.map((load) => 2 * load);
      const pairs = pairRows(scaled(one), scaled(other));
      expect(new Set(pairs).size).toBe(one.length);
      expect(pairs.map((pair) => other[pair as number])).toEqual(one);
    }));
  });
});
