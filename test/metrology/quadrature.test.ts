/** The Gauss–Legendre rule against integrals known in closed form. */
import { integrate } from '../../src/metrology/quadrature';

test.each(Array.from({ length: 20 }, (_, i) => 2 * i))('one panel integrates x^%p over −1 … 1 to 2/(n + 1), to 14 digits', (power) => {
  expect(Math.abs(integrate((x) => x ** power, [-1, 1]) * (power + 1) / 2 - 1)).toBeLessThan(1e-14 * (power + 1));
});

test('one panel does not integrate x^40 exactly: the rule has 20 points', () => {
  expect(Math.abs(integrate((x) => x ** 40, [-1, 1]) * 41 / 2 - 1)).toBeGreaterThan(1e-12);
});

test('panels add up: exp over 0 … 3 in uneven panels is e³ − 1', () => {
  expect(integrate(Math.exp, [0, 0.1, 1.7, 3]) / (Math.exp(3) - 1)).toBeCloseTo(1, 14);
});

test('a kink on a border is integrated exactly', () => {
  expect(integrate((x) => Math.abs(x - 0.3), [0, 0.3, 1])).toBeCloseTo((0.09 + 0.49) / 2, 15);
});

test('no panel, no integral', () => {
  expect(integrate(Math.exp, [])).toBe(0);
  expect(integrate(Math.exp, [1])).toBe(0);
});
