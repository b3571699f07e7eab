/**
 * Fits that normal equations in powers of force cannot do, against exact rational arithmetic (test/exactFit.ts), which is
 * itself checked against NIST's certified values first; and the library's fit as a second, independent path where it can.
 */
import fc from 'fast-check';
import { PolynomialRegression } from 'ml-regression-polynomial';
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import { expectDigits } from '../digits';
import { exactFit } from '../exactFit';
import { strdSet } from '../published';

test.each([['Pontius', 2, true], ['Norris', 1, true], ['NoInt1', 1, false], ['Wampler4', 5, true]] as const)(
  'the exact reference gives the certified values of NIST StRD %s to 14 digits',
  (name, degree, constant) => {
    const set = strdSet(name);
    const exact = exactFit(set.x, set.y, degree, constant);
    set.coefficients.forEach((certified, i) => expectDigits(exact.coefficients[i], certified, 14));
    set.standardErrors.forEach((certified, i) => expectDigits(exact.standardErrors[i], certified, 14));
    expectDigits(exact.residualSd, set.residualSd, 14);
  },
);

/** A smooth response with deviations of about 1e-5 of it, in six decimals. */
function readingsAt(forces: readonly number[]): number[] {
  const top = forces[forces.length - 1];
  return forces.map((force, i) => Number((2 * (force / top) - 0.004 * (force / top) ** 2 + 1e-5 * Math.sin(5 * i + 1)).toFixed(6)));
}

const steps = (from: number, to: number, n: number) => Array.from({ length: n }, (_, i) => Number((from + ((to - from) * i) / (n - 1)).toPrecision(6)));

describe('hard fits against exact arithmetic: coefficients, standard errors and s to 10 digits', () => {
  test.each([
    ['narrow range, A0 held', [1000.1, 1000.2, 1000.3, 1000.4, 1000.5, 1000.6], 3, false],
    ['90 % to 100 %, A0 held', steps(90, 100, 11), 5, false],
    ['91 to 100, A0 held', steps(91, 100, 10), 5, false],
    ['from 50 %, A0 held', steps(50, 100, 11), 5, false],
    ['millions, from 10 %', steps(300_000, 3_000_000, 10), 5, true],
    ['half decades to 1e6', [3, 10, 30, 100, 300, 1000, 3000, 10_000, 30_000, 100_000, 300_000, 1_000_000], 5, true],
    ['half decades to 1e6, A0 held', [3, 10, 30, 100, 300, 1000, 3000, 10_000, 30_000, 100_000, 300_000, 1_000_000], 5, false],
    ['four small forces and one great', [1, 2, 3, 4, 100_000, 1, 2, 3, 4, 100_000], 3, true],
  ] as const)('%s', (_, forces, degree, constant) => {
    const readings = readingsAt(forces);
    const exact = exactFit(forces, readings, degree, constant);
    const fit = fitPolynomial(forces, readings, degree, { constant });
    const first = constant ? 0 : 1;
    exact.coefficients.forEach((value, i) => expectDigits(fit.coefficients[i + first], value, 10, `A${i + first}`));
    exact.standardErrors.forEach((value, i) => expectDigits(fit.standardErrors[i + first], value, 10, `standard error of A${i + first}`));
    expectDigits(fit.residualSd, exact.residualSd, 10, 's');
  });

  test.each([['Wampler3', 1 / 100], ['Wampler5', 100]])('NIST StRD %s, rebuilt from Wampler4 (the same noise × %f): 9 digits', (_, factor) => {
    const { x, y, standardErrors, residualSd } = strdSet('Wampler4');
    const polynomial = (value: number) => 1 + value + value ** 2 + value ** 3 + value ** 4 + value ** 5;
    const noisy = y.map((value, i) => polynomial(x[i]) + (value - polynomial(x[i])) * factor);
    const fit = fitPolynomial(x, noisy, 5);
    fit.coefficients.forEach((a) => expectDigits(a, 1, 9));
    standardErrors.forEach((certified, i) => expectDigits(fit.standardErrors[i], certified * factor, 9));
    expectDigits(fit.residualSd, residualSd * factor, 9);
  });
});

describe('leverage', () => {
  test.each([[1, true], [3, true], [1, false], [3, false]])('degree %i, constant %s: over the points it sums to the number of coefficients (trace of the hat matrix)', (degree, constant) => {
    const forces = steps(10, 100, 10);
    const fit = fitPolynomial(forces, readingsAt(forces), degree, { constant });
    expect(forces.reduce((sum, force) => sum + fit.leverage(force), 0)).toBeCloseTo(degree + (constant ? 1 : 0), 12);
  });
});

describe('forces that cannot be told apart', () => {
  test('are refused, not fitted to rounding', () => {
    expect(() => fitPolynomial([1, 1 + 2 ** -52, 2, 2 - 2 ** -52], [1, 2, 3, 4], 3)).toThrow('forces too close together');
  });
});

describe('the fit library, as an independent path', () => {
  test('gives the same coefficients on scaled forces (property)', () => {
    const reading = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(fc.property(fc.array(reading, { minLength: 12, maxLength: 12 }), fc.integer({ min: 1, max: 5 }), fc.boolean(), (y, degree, constant) => {
      const x = y.map((_, i) => (i + 1) / 12);
      const ours = fitPolynomial(x, y, degree, { constant });
      const theirs = new PolynomialRegression(x, y, degree, { interceptAtZero: !constant });
      const size = Math.max(...ours.coefficients.map(Math.abs), 1e-9);
      theirs.coefficients.forEach((a, i) => expect(Math.abs(a - ours.coefficients[i + (constant ? 0 : 1)]) / size).toBeLessThan(1e-7));
    }));
  });
});
