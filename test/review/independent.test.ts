/** The independent path, against published values, and against the functions of the sheets, which go another way. */
import fc from 'fast-check';
import { errorBand } from '../../src/metrology/errorBand';
import { coverageFactor } from '../../src/metrology/coverage';
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import { staticRuns } from '../../src/metrology/staticRuns';
import { lineThrough } from '../../src/review/independent/line';
import { evaluate, fitByLibrary } from '../../src/review/independent/polynomial';
import { coverage } from '../../src/review/independent/student';
import type { Series } from '../../src/review/recompute/series';
import { statics } from '../../src/review/recompute/statics';
import { correctDigits, expectDigits } from '../digits';
import { strdSet } from '../published';

describe('fit by the library', () => {
  test.each([['Pontius', 2, 13], ['Wampler1', 5, 9], ['Wampler2', 5, 9]] as const)('NIST %s: coefficients', (name, degree, digits) => {
    const { x, y, coefficients } = strdSet(name);
    fitByLibrary(x, y, degree).coefficients.forEach((found, k) => expectDigits(found, coefficients[k], digits, `B${k}`));
  });

  test('NIST Pontius: residual standard deviation', () => {
    const { x, y, residualSd } = strdSet('Pontius');
    expectDigits(fitByLibrary(x, y, 2).sd, residualSd, 13);
  });

  test('agrees with the fit of the sheets on runs of any size, and its value at a force with its coefficients', () => {
    fc.assert(fc.property(
      fc.integer({ min: 1, max: 4 }), fc.double({ min: 1e-3, max: 1e7, noNaN: true }), fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 9, maxLength: 30 }),
      (degree, capacity, scatter) => {
        const forces = scatter.map((_, i) => (capacity * (i + 1)) / scatter.length);
        const outputs = scatter.map((noise, i) => (2 * (i + 1)) / scatter.length + 1e-4 * noise);
        const own = fitByLibrary(forces, outputs, degree);
        fitPolynomial(forces, outputs, degree).coefficients.forEach((coefficient, k) => {
          expect(Math.abs(own.coefficients[k] - coefficient)).toBeLessThanOrEqual((1e-11 * 2) / capacity ** k);
        });
        expect(own.at(forces[0])).toBeCloseTo(evaluate(own.coefficients, forces[0]), 11);
      },
    ));
  });
});

describe('coverage factor', () => {
  // JCGM 100:2008, table G.2, column 95.45 %.
  test.each([[1, 13.97], [2, 4.53], [3, 3.31], [5, 2.65], [10, 2.28], [20, 2.13], [50, 2.05], [100, 2.025], [Infinity, 2]])('%p degrees of freedom: %p', (dof, published) => {
    expect(Number(coverage(0.9545, dof).toFixed(dof === 100 ? 3 : 2))).toBe(published);
  });

  test('one degree of freedom, 95 %: the tangent of 0.475·π', () => {
    expectDigits(coverage(0.95, 1), Math.tan(0.475 * Math.PI), 13);
  });

  test('agrees with the library of the sheets from one to a billion degrees of freedom', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 9, noNaN: true }), fc.constantFrom(0.9545, 0.95, 0.975, 0.99), (power, probability) => {
      const dof = 10 ** power;
      expect(correctDigits(coverage(probability, dof), coverageFactor(probability, dof))).toBeGreaterThan(10);
    }));
  });
});

test('a line gives back its slope, and no line goes through one abscissa', () => {
  const line = lineThrough([1, 2, 4], [3, 5, 9]);
  expect(line).toMatchObject({ slope: 2, sd: 0 });
  expect(line?.at(10)).toBe(21);
  expect(lineThrough([3, 3, 3], [1, 2, 3])).toBeUndefined();
});

test('the error band of pairs of readings is that of the search over slopes', () => {
  fc.assert(fc.property(fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 9, maxLength: 9 }), (scatter) => {
    const forces = [0, 2, 4, 6, 8, 6, 4, 2, 0];
    const readings = forces.map((force, i) => 0.25 * force + (i === 0 ? 0 : 1e-3 * scatter[i]));
    const points = forces.map((force, row) => ({ row, run: 0, force, reading: readings[row] - readings[0] }));
    const series = { readings: [readings], fromFirstZero: points } as unknown as Series;
    const runs = [points.map(({ row, force, reading }) => ({ row: row + 1, place: '', order: row, force, reading }))];
    expect(statics(series, 8).error_band?.value).toBeCloseTo(errorBand(staticRuns(runs)).halfWidth, 13);
  }));
});
