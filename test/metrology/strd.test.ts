/**
 * Least squares against certified values: NIST/ITL Statistical Reference Datasets, https://www.itl.nist.gov/div898/strd/
 * (certified to 15 digits, computed by NIST with 500-digit arithmetic).
 */
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import { correctDigits } from '../digits';
import { strdSet } from '../published';

const report: string[] = [];

afterAll(() => {
  process.stdout.write(`\nNIST StRD, correct digits (least of the set's values)\n${report.join('\n')}\n`);
});

function leastDigits(name: string, degree: number, constant: boolean) {
  const set = strdSet(name);
  const fit = fitPolynomial(set.x, set.y, degree, { constant });
  const held = constant ? 0 : 1;
  const least = (found: readonly (number | undefined)[], certified: readonly number[]) =>
    Math.min(...certified.map((value, i) => correctDigits(found[i + held] ?? NaN, value)));
  const digits = {
    coefficients: least(fit.coefficients, set.coefficients),
    standardErrors: least(fit.standardErrors, set.standardErrors),
    residualSd: correctDigits(fit.residualSd ?? NaN, set.residualSd),
    rSquared: correctDigits(fit.rSquared ?? NaN, set.rSquared),
  };
  const cells = Object.entries(digits).map(([what, value]) => `${what} ${value.toFixed(1)}`);
  report.push(`  ${name.padEnd(9)} degree ${degree}  ${cells.join('  ')}`);
  return digits;
}

describe('NIST StRD', () => {
  test.each([
    ['Pontius', 2, true, 13],
    ['Norris', 1, true, 13],
    ['NoInt1', 1, false, 13],
    ['Wampler1', 5, true, 9],
    ['Wampler2', 5, true, 9],
    ['Wampler4', 5, true, 9],
  ] as const)('%s: certified coefficients, standard errors, s and R² (degree %i, constant %s) to %i digits', (name, degree, constant, digits) => {
    const found = leastDigits(name, degree, constant);
    expect(found.coefficients).toBeGreaterThanOrEqual(digits);
    expect(found.standardErrors).toBeGreaterThanOrEqual(digits);
    expect(found.residualSd).toBeGreaterThanOrEqual(digits);
    expect(found.rSquared).toBeGreaterThanOrEqual(digits);
  });
});
