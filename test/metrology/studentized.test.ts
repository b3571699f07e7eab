import fc from 'fast-check';
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import { deletedResiduals, outlierThreshold } from '../../src/metrology/studentized';
import { expectDigits } from '../digits';
import { strdSet } from '../published';

/** The slow way: fit without the point, and compare the point with the prediction of that fit. */
function byRefit(x: readonly number[], y: readonly number[], degree: number, constant: boolean, i: number) {
  const others = fitPolynomial(x.toSpliced(i, 1), y.toSpliced(i, 1), degree, { constant });
  const predicted = others.coefficients.reduceRight((sum, a) => sum * x[i] + a, 0);
  const deviation = y[i] - predicted;
  return { deviation, t: deviation / ((others.residualSd as number) * Math.sqrt(1 + others.leverage(x[i]))) };
}

describe('deleted residuals', () => {
  test('agree with the four points of Penn State STAT 501, lesson 11.4 (results as quoted publicly; the points from memory)', () => {
    const x = [1, 2, 3, 10];
    const y = [2.1, 3.8, 5.2, 2.1];
    const found = deletedResiduals(x, y, fitPolynomial(x, y, 1));
    [-1.7431, 0.1217, 1.6361, -19.799].forEach((t, i) => expect(found?.[i].t).toBeCloseTo(t, 4));
  });

  test.each([['Pontius', 2], ['Norris', 1], ['Wampler4', 5]])('agree with a fit without each point of NIST’s %s', (name, degree) => {
    const { x, y } = strdSet(name);
    const found = deletedResiduals(x, y, fitPolynomial(x, y, degree));
    expect(found).toHaveLength(x.length);
    found?.forEach(({ deviation, t }, i) => {
      const slow = byRefit(x, y, degree, true, i);
      expectDigits(deviation, slow.deviation, 7, `deviation of point ${i + 1}`);
      expectDigits(t, slow.t, 7, `t of point ${i + 1}`);
    });
  });

  test('agree with a fit without the point, whatever the readings, with and without a constant', () => {
    const reading = fc.double({ min: -1, max: 1, noNaN: true }).map((value) => Math.round(value * 1e6) / 1e6);
    fc.assert(fc.property(fc.array(reading, { minLength: 8, maxLength: 14 }), fc.integer({ min: 1, max: 3 }), fc.boolean(), (noise, degree, constant) => {
      const x = noise.map((_, i) => 1 + i % 7);
      const y = noise.map((value, i) => 2 * x[i] + value);
      const found = deletedResiduals(x, y, fitPolynomial(x, y, degree, { constant }));
      found?.forEach((point, i) => {
        const slow = byRefit(x, y, degree, constant, i);
        expect(point.deviation).toBeCloseTo(slow.deviation, 9);
        if (Math.abs(slow.t) < 1e4) expect(point.t).toBeCloseTo(slow.t, 5);
      });
    }));
  });

  test('are rounding, not outliers, on points that lie exactly on the polynomial', () => {
    const x = [1, 2, 3, 4, 5, 6, 7];
    const y = x.map((at) => 0.1 + 0.3 * at + 0.007 * at * at);
    expect(deletedResiduals(x, y, fitPolynomial(x, y, 2))?.every(({ t }) => t === 0)).toBe(true);
  });

  test('are infinite for the one point off a line that all others lie on', () => {
    const x = [1, 2, 3, 4, 5, 6];
    const y = [1, 2, 3, 4.5, 5, 6];
    const found = deletedResiduals(x, y, fitPolynomial(x, y, 1));
    expect(found?.[3].t).toBe(Infinity);
    expect(found?.[3].deviation).toBeCloseTo(0.5, 12);
    expect(Number.isFinite(found?.[0].t)).toBe(true);
  });

  test('say nothing of a point that alone determines the polynomial', () => {
    const x = [1, 1, 1, 1, 9];
    const y = [1, 1.1, 0.9, 1, 40];
    expect(deletedResiduals(x, y, fitPolynomial(x, y, 1))?.[4]).toEqual({ deviation: 0, t: 0 });
  });

  test('need two degrees of freedom', () => {
    expect(deletedResiduals([1, 2, 3], [1, 2, 4], fitPolynomial([1, 2, 3], [1, 2, 4], 1))).toBeUndefined();
  });
});

describe('the threshold of an outlier', () => {
  test('is Student’s t at the probability shared among the points: t(0.9995, 10) = 4.587 (printed tables) for 10 points at 1 %', () => {
    expect(outlierThreshold(10, 11, 0.01)).toBeCloseTo(4.587, 3);
  });

  test('is passed by good fits no more often than it says: at 5 %, in 2000 fits of normal scatter', () => {
    const random = normal(7);
    const x = Array.from({ length: 20 }, (_, i) => 1 + (i % 10));
    let alarms = 0;
    for (let trial = 0; trial < 2000; trial += 1) {
      const y = x.map((at) => at + random());
      const found = deletedResiduals(x, y, fitPolynomial(x, y, 2));
      if (found?.some(({ t }) => Math.abs(t) > outlierThreshold(20, 17, 0.05))) alarms += 1;
    }
    expect(alarms).toBeGreaterThan(60); // 3 %: far less would be a test too dull
    expect(alarms).toBeLessThan(125);
  });
});

/** Normal deviates from a seed: the same in every run. */
function normal(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
