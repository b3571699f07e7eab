/** Statements of conformity: limits 9.9 and 10.1, U = 0.04, worked out by hand from ILAC-G8 (from memory). */
import fc from 'fast-check';
import { decide } from '../../src/metrology/decision';

const limits = { lower: 9.9, upper: 10.1 };
const decided = (value: number, guardFactor: number, tolerance: { lower?: number; upper?: number } = limits) => decide(value, tolerance, 0.04, guardFactor);

describe('ILAC-G8 with w = U (from memory)', () => {
  test.each([
    [9.859, 'fail'], [9.86, 'conditional fail'], [9.899, 'conditional fail'], [9.9, 'conditional pass'], [9.939, 'conditional pass'],
    [9.94, 'pass'], [10, 'pass'], [10.06, 'pass'], [10.061, 'conditional pass'], [10.1, 'conditional pass'], [10.101, 'conditional fail'],
    [10.14, 'conditional fail'], [10.141, 'fail'],
  ])('%p: %s', (value, expected) => {
    expect(decided(value, 1)).toBe(expected);
  });
});

describe('simple acceptance', () => {
  test.each([[9.899, 'fail'], [9.9, 'pass'], [10, 'pass'], [10.1, 'pass'], [10.101, 'fail']])('%p: %s', (value, expected) => {
    expect(decided(value, 0)).toBe(expected);
  });
});

test('a guard factor of 0.5 moves the borders to ± 0.02 about the limits', () => {
  expect([9.879, 9.88, 9.9, 9.919, 9.92].map((value) => decided(value, 0.5)))
    .toEqual(['fail', 'conditional fail', 'conditional pass', 'conditional pass', 'pass']);
});

test('a missing limit leaves its side open', () => {
  expect(decided(-1e6, 1, { upper: 10.1 })).toBe('pass');
  expect(decided(10.08, 1, { upper: 10.1 })).toBe('conditional pass');
  expect(decided(1e6, 1, { lower: 9.9 })).toBe('pass');
  expect(decided(9.88, 1, { lower: 9.9 })).toBe('conditional fail');
});

test('a guard band wider than half the tolerance lets nothing pass outright', () => {
  expect([9.85, 9.95, 10, 10.05, 10.15].map((value) => decide(value, limits, 0.15, 1)))
    .toEqual(['conditional fail', 'conditional pass', 'conditional pass', 'conditional pass', 'conditional fail']);
});

test('0.2 is on the border of 0.3 − 0.1, and 0.1 + 0.2 on the limit 0.3, whatever binary fractions say', () => {
  expect(decide(0.2, { upper: 0.3 }, 0.1, 1)).toBe('pass');
  expect(decide(0.1 + 0.2, { upper: 0.3 }, 0.1, 0)).toBe('pass');
  expect(decide(0.3 + 1e-15, { upper: 0.3 }, 0.1, 0)).toBe('fail');
});

test('mirrored at zero, value and limits get the same statement', () => {
  const number = fc.integer({ min: -300, max: 300 }).map((n) => n / 100);
  fc.assert(fc.property(number, fc.integer({ min: 0, max: 100 }), (value, factor) => {
    const here = decide(value, { lower: -1, upper: 2 }, 0.25, factor / 50);
    expect(decide(-value, { lower: -2, upper: 1 }, 0.25, factor / 50)).toBe(here);
  }));
});

test('a better statement is never lost by moving towards the middle', () => {
  const order = ['fail', 'conditional fail', 'conditional pass', 'pass'];
  for (let value = -200; value < 50; value += 1) {
    const [here, closer] = [value, value + 1].map((v) => order.indexOf(decide(v / 100, { lower: -1, upper: 2 }, 0.3, 1)));
    expect(closer).toBeGreaterThanOrEqual(here);
  }
});

test('a negative U, a negative guard factor and limits that cross are refused', () => {
  expect(() => decide(1, limits, -1, 1)).toThrow('U: found -1; expected an expanded uncertainty, 0 or more');
  expect(() => decide(1, limits, 1, -1)).toThrow('rule: found -1; expected a guard factor of 0 or more');
  expect(() => decide(1, { lower: 2, upper: 1 }, 1, 1)).toThrow('lower: found 2, with upper 1');
  expect(() => decide(1, limits, 1e200, 1e200)).toThrow('rule: found 1e+200, with U 1e+200');
});
