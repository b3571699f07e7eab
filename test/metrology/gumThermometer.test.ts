/** JCGM 100, example H.3: a thermometer's calibration line, its uncertainties, and what they combine to. */
import { combineUncertainty } from '../../src/metrology/combinedUncertainty';
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import { expectDigits } from '../digits';
import { gum } from '../published';

const { t_k, b_k, t0, published, recomputed } = gum.H3_thermometer;
const from20: number[] = t_k.map((t: number) => t - t0);
const fit = fitPolynomial(from20, b_k, 1);
const [y1, y2] = fit.coefficients;
const [s1, s2] = fit.standardErrors as number[];
const s = fit.residualSd as number;
const mean = from20.reduce((sum, t) => sum + t, 0) / from20.length;
const correction = (t: number) => y1 + y2 * (t - t0);
const uncertainty = (t: number) => s * Math.sqrt(fit.leverage(t - t0));
/** From u²(b) = s1² + 2·r·s1·s2·ΔT + s2²·ΔT² at ΔT = 10. */
const r = (uncertainty(30) ** 2 - s1 ** 2 - 100 * s2 ** 2) / (20 * s1 * s2);

test('JCGM 100, H.3: intercept, slope, their standard uncertainties and s as printed', () => {
  expect(y1.toFixed(4)).toBe(published.y1);
  expect(s1.toFixed(4)).toBe(published.s_y1);
  expect(y2.toFixed(5)).toBe(published.y2);
  expect(s2.toFixed(5)).toBe(published.s_y2);
  expect(r.toFixed(3)).toBe(published.r);
  expect(s.toFixed(4)).toBe(published.s);
  expect(fit.dof).toBe(published.nu);
});

test('JCGM 100, H.3.4: the correction at 30 °C and its uncertainty as printed', () => {
  expect(correction(30).toFixed(4)).toBe(published.b_30);
  expect(uncertainty(30).toFixed(4)).toBe(published.uc_b30);
  expect(`${(1e6 * uncertainty(30) ** 2).toFixed(1)}e-6`).toBe(published.uc2_b30);
});

test('JCGM 100, H.3.5: about the mean temperature the intercept is −0.1625(11), uncorrelated with the slope', () => {
  const middle = mean + t0;
  expect(Math.abs(middle - Number(published.t_min))).toBeLessThan(5.1e-5); // printed 24.0085, exactly 24.00845…
  expect(`${correction(middle).toFixed(4)}(${(1e4 * uncertainty(middle)).toFixed(0)})`).toBe(published.y1_prime);
});

test('JCGM 100, H.3.5: UNCERTAINTY’s arithmetic combines the uncorrelated pair to u(b) at 30 °C', () => {
  const components = [uncertainty(mean + t0), (10 - mean) * s2].map((value) => ({ value, dof: Infinity }));
  expectDigits(combineUncertainty(components, 0.95).combined, recomputed.uc_b30, 12);
});

test('JCGM 100, H.3, recomputed: every figure to 12 digits', () => {
  const found = { y1, s_y1: s1, y2, s_y2: s2, s, t_mean: mean + t0, b_30: correction(30), uc_b30: uncertainty(30) };
  for (const [name, value] of Object.entries(found)) expectDigits(value, recomputed[name], 12, name);
  expectDigits(r, recomputed.r, 10);
  t_k.forEach((t: number, i: number) => expectDigits(correction(t), recomputed.predicted[i], 12, `b(${t})`));
});
