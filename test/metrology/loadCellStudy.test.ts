/**
 * The Pontius load cell (NIST StRD; NIST/SEMATECH e-Handbook 4.6.1, https://www.itl.nist.gov/div898/handbook/pmd/section6/pmd61.htm):
 * 40 readings, 2 runs × 20 loads. Expected values: exact-arithmetic recomputation in test/published/load-cell-study.json,
 * beside the handbook's own figures of about six digits.
 */
import { bestDegree, degreeSteps } from '../../src/metrology/degree';
import { forceLimits } from '../../src/metrology/forceLimits';
import { lackOfFit } from '../../src/metrology/lackOfFit';
import { loadingRange, lowerLimitFactor } from '../../src/metrology/loadingRange';
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import type { Point } from '../../src/metrology/run';
import { expectDigits } from '../digits';
import { loadCellStudy, strdSet } from '../published';

const { x, y } = strdSet('Pontius');
const run: Point[] = x.map((force, i) => ({ row: i + 1, place: `row ${i + 1}`, order: i + 1, force, reading: y[i] }));

describe('Pontius load cell, every degree', () => {
  test.each([1, 2, 3, 4, 5])('degree %i: coefficients and standard errors to 9 digits, s to 12, lack-of-fit F to 9', (degree) => {
    const expected = loadCellStudy.fits_and_lack_of_fit[degree];
    const fit = fitPolynomial(x, y, degree);
    expected.B.forEach((value: string, i: number) => expectDigits(fit.coefficients[i], Number(value), 9, `A${i}`));
    expected.se.forEach((value: string, i: number) => expectDigits(fit.standardErrors[i], Number(value), 9, `standard error of A${i}`));
    expectDigits(fit.residualSd, Number(expected.s), 12, 's');
    const lack = lackOfFit(x, y, fit);
    expectDigits(lack?.f, Number(expected.F), 9, 'F');
    expectDigits(lack?.p, expected.p, 8, 'p');
    expect([lack?.dof, lack?.pureErrorDof]).toEqual([expected.df_lof, expected.df_pe]);
  });

  test('handbook figures of the straight line, printed to six digits: s 0.0021712694, F 214.7464', () => {
    const fit = fitPolynomial(x, y, 1);
    expectDigits(fit.residualSd, 0.0021712694, 5.5, 's');
    expectDigits(lackOfFit(x, y, fit)?.f, 214.7464, 5.5, 'F');
  });

  test('lack of fit is undefined without repeats', () => {
    expect(lackOfFit([1, 2, 3, 4], [1, 2, 3, 5], fitPolynomial([1, 2, 3, 4], [1, 2, 3, 5], 1))).toBeUndefined();
  });
});

describe('Pontius load cell, degree of best fit', () => {
  const { n1, steps: expected } = loadCellStudy.E74_style_on_Pontius.degree_of_fit_on_run_averages;
  const steps = degreeSteps([run]);

  test('degree 2 is chosen', () => {
    expect(bestDegree(steps)).toBe(2);
  });
  test.each(expected as { m: number; s_m: string; ratio: string; C: number; significant: boolean }[])(
    'degree $m: s, ratio and threshold of the run averages',
    ({ m, s_m, ratio, C, significant }) => {
      expect(n1).toBe(20);
      const step = steps[m - 1];
      expectDigits(step.residualSd, Number(s_m), 11, 's');
      expectDigits(step.ratio, Number(ratio), 9, 'ratio');
      expectDigits(step.threshold, C, 10, 'C');
      expect(step.significant).toBe(significant);
    },
  );
});

describe('Pontius load cell, limits', () => {
  const expected = loadCellStudy.inverse_prediction_quadratic;

  test('load for a deflection of 1.239722 with 95 % limits, to 11 digits', () => {
    const limits = forceLimits(fitPolynomial(x, y, 2), { from: 150_000, to: 3_000_000 }, 0.95)(1.239722);
    expectDigits(limits.force, Number(expected.load), 11, 'load');
    expectDigits(limits.lower, Number(expected.lower), 11, 'lower limit');
    expectDigits(limits.upper, Number(expected.upper), 11, 'upper limit');
  });

  test.each([1, 2, 3, 4, 5])('degree %i: lower limit factor by the mean force/deflection ratio, to 11 digits', (degree) => {
    const factor = lowerLimitFactor(run, fitPolynomial(x, y, degree));
    expectDigits(factor, Number(loadCellStudy.E74_style_on_Pontius.by_degree[degree].LLF_force_mean_ratio), 11, 'LLF');
  });

  test('LLF of the quadratic is 676.548996714 load units', () => {
    expectDigits(lowerLimitFactor(run, fitPolynomial(x, y, 2)), 676.548996714, 11);
  });

  test('class A holds from 400·LLF to the greatest load, class AA from 2000·LLF', () => {
    const fit = fitPolynomial(x, y, 2);
    expectDigits(loadingRange(run, fit, 'A').from, 400 * 676.548996714, 11);
    expectDigits(loadingRange(run, fit, 'AA').from, 2000 * 676.548996714, 11);
    expect(loadingRange(run, fit, 'AA').to).toBe(3_000_000);
    expect(loadingRange(run, fit, 'A').rule).toBe('lower limit factor');
  });
});
