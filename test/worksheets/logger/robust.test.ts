import fc from 'fast-check';
import { medianFiltered, medianOf, robustDeviation, robustLine } from '../../../src/worksheets/logger/robust';

test('the running median of five is the median of each five', () => {
  fc.assert(fc.property(fc.array(fc.double({ noNaN: true, min: -10, max: 10 }), { minLength: 5, maxLength: 30 }), (values) => {
    const filtered = medianFiltered(Float64Array.from(values));
    values.forEach((value, i) => {
      const inside = i >= 2 && i < values.length - 2;
      expect(filtered[i]).toBe(inside ? values.slice(i - 2, i + 3).sort((a, b) => a - b)[2] : value);
    });
  }));
});

test('a median and a deviation by hand, and a line that one wild point does not turn', () => {
  expect(medianOf([4, 1, 3, 2])).toBe(2.5);
  // Deviations from the median 3 are 2, 1, 0, 1, 97; their median is 1.
  expect(robustDeviation([1, 2, 3, 4, 100])).toBeCloseTo(1.4826022, 6);
  const line = robustLine([0, 1, 2, 3, 4], [1, 3, 5, 70, 9]);
  expect(line.slope).toBe(2);
  expect(line.at(10)).toBe(21);
});
