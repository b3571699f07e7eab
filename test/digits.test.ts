import { correctDigits, expectDigits } from './digits';

describe('digits helper', () => {
  test('an error of one part in a thousand is three digits', () => {
    expect(correctDigits(1.001, 1)).toBeCloseTo(3, 10);
  });
  test('equal values count as 16 digits', () => {
    expect(correctDigits(2, 2)).toBe(16);
  });
  test('fails when too few digits agree', () => {
    expect(() => expectDigits(1.001, 1, 4)).toThrow('3.0 digits agree, 4 asked');
  });
  test('fails on NaN and on an absent value', () => {
    expect(() => expectDigits(NaN, 1, 1)).toThrow();
    expect(() => expectDigits(undefined, 1, 1)).toThrow();
  });
});
