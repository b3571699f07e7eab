import fc from 'fast-check';
import { decimalsOf, fixedFormat, percentFormat, tellingDecimals, uncertaintyFormat } from '../../../src/worksheets/certificate/digits';

test.each([
  [0.0123, 3], [0.00040, 5], [0.0996, 2], [0.095, 3], [0.0949, 3], [1.04, 1], [9.96, 0], [9.94, 1], [47, 0], [1234, 0], [0, 0], [-0.0123, 3],
])('an uncertainty of %p takes %i decimals', (uncertainty, decimals) => {
  expect(decimalsOf(uncertainty)).toBe(decimals);
});

test('a shown uncertainty has two significant digits, and is off by a twentieth at most', () => {
  fc.assert(fc.property(fc.double({ min: 1e-9, max: 99, noNaN: true }), (uncertainty) => {
    const shown = uncertainty.toFixed(decimalsOf(uncertainty));
    expect(shown.replace('.', '').replace(/^0+/, '')).toHaveLength(2);
    expect(Math.abs(Number(shown) - uncertainty)).toBeLessThanOrEqual(0.0501 * uncertainty);
  }));
});

test('formats: as many zeros as decimals, per cent, and a power of ten from a hundred on', () => {
  expect([fixedFormat(0), fixedFormat(3), percentFormat(0.000203), uncertaintyFormat(0.0123), uncertaintyFormat(99.4), uncertaintyFormat(99.6), uncertaintyFormat(1234)])
    .toEqual(['0', '0.000', '0.000%', '0.000', '0', '0.0E+00', '0.0E+00']);
});

test('a value beyond its limit never looks as if it met it', () => {
  fc.assert(fc.property(fc.double({ min: 1e-6, max: 10, noNaN: true }), fc.double({ min: 1e-7, max: 1, noNaN: true }), fc.integer({ min: 0, max: 4 }), (limit, by, decimals) => {
    const value = limit + by;
    const enough = tellingDecimals(value, limit, decimals);
    expect(enough).toBeGreaterThanOrEqual(decimals);
    expect(Number(value.toFixed(enough))).toBeGreaterThan(Number(limit.toFixed(enough)));
  }));
  expect(tellingDecimals(0.0504, 0.05, 3)).toBe(4);
});

test('a value within its limit keeps the digits of its uncertainty', () => {
  expect(tellingDecimals(0.0496, 0.05, 2)).toBe(2);
  expect(tellingDecimals(0.05, 0.05, 2)).toBe(2);
});
