/**
 * Intervals against test/published/intervals.json: NCSLI RP-1 and NASA-HDBK-8739.19-5 as passed on by public secondary sources,
 * each with the number of digits printed there; recomputed values to more digits.
 */
import fc from 'fast-check';
import { growth, timeToLimit } from '../../src/metrology/growth';
import { bounded, reliabilityInterval, shortening, staircaseInterval } from '../../src/metrology/interval';
import { intervalTest } from '../../src/metrology/intervalTest';
import { expectDigits } from '../digits';
import { intervals } from '../published';

interface Case {
  readonly in_tol: number;
  readonly n: number;
  readonly target: number;
  readonly I0: number;
  readonly conf: number;
  readonly published: { interval: number; rejection: number; R_lo: number; R_hi: number };
  readonly recomputed: { Robs: number; Q: number; I: number; RL: number; RU: number };
}

describe('test of an interval, NCSLI RP-1 method A3 (numbers of a 2019 tutorial in a public secondary source)', () => {
  test.each(intervals.A3.cases as Case[])('$in_tol of $n inside, target $target, interval $I0', ({ in_tol, n, target, I0, conf, published, recomputed }) => {
    const found = intervalTest(I0, { inside: in_tol, outside: n - in_tol }, target, conf);
    expect(Math.round(found.next)).toBe(published.interval);
    expect(found.rejection).toBeCloseTo(published.rejection, 4);
    expect(found.lower).toBeCloseTo(published.R_lo, 4);
    expect(found.upper).toBeCloseTo(published.R_hi, 4);
    expectDigits(found.observed, recomputed.Robs, 15);
    expectDigits(found.rejection, recomputed.Q, 11);
    expectDigits(found.next, recomputed.I, 11);
    expectDigits(found.lower, recomputed.RL, 8);
    expectDigits(found.upper, recomputed.RU, 8);
  });
  test('counts that reach the target leave the interval, and so does a rejection below the confidence asked', () => {
    expect(intervalTest(365, { inside: 19, outside: 1 }, 0.9, 0.5)).toMatchObject({ next: 365, rejection: undefined });
    expect(intervalTest(365, { inside: 42, outside: 8 }, 0.9, 0.8).next).toBe(365);
  });
  test('an interval is at the most halved', () => {
    expect(intervalTest(365, { inside: 0, outside: 20 }, 0.95, 0.5)).toMatchObject({ next: 182.5, lower: 0 });
  });
});

describe('staircase', () => {
  test('a = 0.1 and R = 0.9 shorten by b = 0.575902 (NCSLI RP-1 simple response, from memory)', () => {
    expect(intervals.A1_A2_formulas).toContain('a=0.1,R=0.9 -> b=0.575902');
    expect(1 - shortening(0.9, 0.1)).toBeCloseTo(0.575902, 6);
    expect(staircaseInterval(100, 1.01, 0.9)).toBeCloseTo(100 * (1 - 0.575902), 4);
  });
  test('steps up and down balance when the part R is found inside: (1 + a)^R·(1 − b)^(1 − R) = 1', () => {
    fc.assert(fc.property(fc.double({ min: 0.05, max: 0.98, noNaN: true }), fc.double({ min: 0.01, max: 0.5, noNaN: true }), (target, a) => {
      expect((1 + a) ** target * shortening(target, a) ** (1 - target)).toBeCloseTo(1, 10);
    }));
  });
  test('up to 80 % of the limit extends, up to the limit stays (ILAC-G24, from memory)', () => {
    expect([0, 0.8, 0.81, 1].map((found) => Math.round(staircaseInterval(100, found, 0.9)))).toEqual([110, 110, 100, 100]);
  });
});

describe('reliability', () => {
  test('12 months, 0.80 observed, 0.95 wanted: 2.7584 months (exponential model, from memory)', () => {
    expect(intervals.reliability_models).toContain('(I=12 mo,Robs=0.80,Rt=0.95 -> 2.7584 mo)');
    expect(reliabilityInterval(12, { inside: 80, outside: 20 }, 0.95, {})).toBeCloseTo(2.7584, 4);
  });
  test.each((intervals.S2_data.weeks as number[]).map((weeks, i) => [weeks, intervals.S2_data.n[i], intervals.S2_data.R[i]] as const))(
    'NCSLI RP-1 table D-1, %i weeks, n = %i, R = %p: items at the next interval have the target reliability by the model',
    (weeks, n, R) => {
      const inside = Math.round(n * R);
      expect(inside / n).toBeCloseTo(R, 4);
      if (inside === n) {
        expect(() => reliabilityInterval(weeks, { inside, outside: 0 }, 0.9, {})).toThrow(/Give the greatest one/);
        return;
      }
      const next = reliabilityInterval(weeks, { inside, outside: n - inside }, 0.9, {});
      expect((inside / n) ** (next / weeks)).toBeCloseTo(0.9, 12);
    },
  );
  test('without any outside the greatest interval is taken, without any inside the least', () => {
    expect(reliabilityInterval(12, { inside: 3, outside: 0 }, 0.9, { greatest: 24 })).toBe(24);
    expect(reliabilityInterval(12, { inside: 0, outside: 3 }, 0.9, { least: 3 })).toBe(3);
    expect(() => reliabilityInterval(12, { inside: 0, outside: 3 }, 0.9, {})).toThrow(/Give the least one/);
  });
  test('bounds hold an interval', () => {
    expect([1, 5, 9].map((interval) => bounded(interval, { least: 3, greatest: 7 }))).toEqual([3, 5, 7]);
    expect(bounded(9, {})).toBe(9);
  });
});

describe('growth of a value, NASA-HDBK-8739.19-5 chapter 7 (tables 7-2 to 7-7 in a public secondary source)', () => {
  const { dt, delta, u0, y0, published, recomputed } = intervals.variables_method;
  const model = growth(dt, delta, u0, 2);
  const until = 1730;

  test('coefficients and residual standard deviation', () => {
    expect(model.coefficients[1]).toBeCloseTo(published.b1, 8);
    expect(model.coefficients[2]).toBeCloseTo(published.b2, 8);
    expect(model.residualSd).toBeCloseTo(published.syx, 4);
    expectDigits(model.coefficients[1], recomputed.b[0], 10);
    expectDigits(model.coefficients[2], recomputed.b[1], 11);
    expectDigits(model.residualSd, recomputed.syx, 12);
  });
  test.each([1, 70, 200, 400])('variance of the change after %i days is that of the covariance matrix', (t) => {
    const [[c11, c12], [, c22]] = recomputed.cov;
    const fromMatrix = c11 * t ** 2 + 2 * c12 * t ** 3 + c22 * t ** 4;
    expectDigits(model.uncertaintyAt(t) ** 2 - u0 ** 2 - recomputed.syx ** 2, fromMatrix, 9);
    const printed = published.cov11 * t ** 2 + 2 * published.cov12 * t ** 3 + published.cov22 * t ** 4;
    expect(Math.abs(printed - fromMatrix)).toBeLessThan(5e-9 * t ** 2 + 1e-12 * t ** 3 + 5e-15 * t ** 4); // digits printed
  });
  test('uncertainty reaches 0.5 after 327.15 days', () => {
    const { time, end } = timeToLimit(model, { value: y0, uncertainty: 0.5, probability: 0.9 }, until);
    expect(time).toBeCloseTo(published.interval_u_target_0_5, 1);
    expect(end).toBe('uncertainty');
  });
  test('limits 9 and 11 hold with 90 % for 140.1 days', () => {
    const { time, end } = timeToLimit(model, { value: y0, lower: 9, upper: 11, probability: 0.9 }, until);
    expect(time).toBeCloseTo(published.interval_rel_target_9_11_90pct, 1);
    expect(end).toBe('upper');
  });
  test('the upper limit 11 alone holds with 90 % for 171.75 days', () => {
    expect(timeToLimit(model, { value: y0, upper: 11, probability: 0.9 }, until).time).toBeCloseTo(published.interval_upper_only_11, 1);
  });
  test('a limit met on the first day, and one never met, have no interval', () => {
    expect(() => timeToLimit(model, { value: y0, upper: 10.1, probability: 0.9 }, until)).toThrow(/upper limit is met on the day of calibration/);
    expect(() => timeToLimit(growth([1, 2], [0, 0], 0, 1), { value: 1, upper: 2, probability: 0.9 }, 20)).toThrow(/no limit is met within 20/);
  });
  test('a falling value meets its lower limit at the same time as the mirrored one the upper', () => {
    const mirrored = growth(dt, delta.map((d: number) => -d), u0, 2);
    const { time, end } = timeToLimit(mirrored, { value: -y0, lower: -11, upper: -9, probability: 0.9 }, until);
    expect(end).toBe('lower');
    expect(time).toBeCloseTo(timeToLimit(model, { value: y0, lower: 9, upper: 11, probability: 0.9 }, until).time, 8);
  });
});
