/** TEMPREPORT: slopes and their standard errors against certified values, exact arithmetic and plain propagation. */
import fc from 'fast-check';
import { expectDigits } from '../digits';
import { exactFit } from '../exactFit';
import { strdSet } from '../published';
import { column, fault, table } from './call';

interface Line {
  readonly value: number;
  readonly error: number | '';
  readonly n: number;
}

function report(temperatures: number[], zeros: (number | null)[], spans: (number | null)[], reference?: number): { zero: Line; span: Line } {
  const [zero, span] = table('TEMPREPORT', column(...temperatures), column(...zeros), column(...spans), reference ?? null, false)
    .map(([, value, error, n]) => ({ value, error, n }));
  return { zero, span };
}

const temperatures = [-10, 0, 10, 23, 35, 45, 23];
const zeros = [0.0112, 0.0115, 0.0121, 0.0126, 0.0134, 0.0139, 0.0127];
const spans = [1.9978, 1.9986, 1.9991, 2.0002, 2.0009, 2.0017, 2.0001];

describe('TEMPREPORT', () => {
  test('NIST StRD Norris: the slope and its standard error as certified, to 13 digits', () => {
    const { x, y, coefficients, standardErrors } = strdSet('Norris');
    const { zero, span } = report(x, y, y, 0);
    expectDigits(zero.value, coefficients[1], 13);
    expectDigits(zero.error as number, standardErrors[1], 13);
    expectDigits(span.value, coefficients[1] / coefficients[0], 10);
    expect(zero.n).toBe(36);
  });
  test('zero effect: slope and standard error of exact rational least squares, to 11 digits (property)', () => {
    const run = fc.integer({ min: 3, max: 9 }).chain((n) => fc.tuple(
      fc.uniqueArray(fc.integer({ min: -200, max: 800 }), { minLength: n, maxLength: n }),
      fc.array(fc.integer({ min: -9999, max: 9999 }), { minLength: n, maxLength: n }),
    ));
    fc.assert(fc.property(run, ([tenths, counts]) => {
      const [t, z] = [tenths.map((v) => v / 10), counts.map((v) => v / 1e5)];
      const exact = exactFit(t, z, 1, true);
      fc.pre(exact.residualSd > 0 && exact.coefficients[1] !== 0);
      const { zero } = report(t, z, z.map((v) => v + 2));
      expectDigits(zero.value, exact.coefficients[1], 11);
      expectDigits(zero.error as number, exact.standardErrors[1], 11);
    }));
  });
  test('zero effect: standard error is STEYX/√DEVSQ, worked out plainly', () => {
    const mean = (list: number[]) => list.reduce((sum, value) => sum + value) / list.length;
    const [mt, mz] = [mean(temperatures), mean(zeros)];
    const sxx = temperatures.reduce((sum, t) => sum + (t - mt) ** 2, 0);
    const sxy = temperatures.reduce((sum, t, i) => sum + (t - mt) * (zeros[i] - mz), 0);
    const syy = zeros.reduce((sum, z) => sum + (z - mz) ** 2, 0);
    const steyx = Math.sqrt((syy - sxy ** 2 / sxx) / (temperatures.length - 2));
    const { zero } = report(temperatures, zeros, spans);
    expectDigits(zero.value, sxy / sxx, 12);
    expectDigits(zero.error as number, steyx / Math.sqrt(sxx), 9);
  });
  const steep = [1.1, 1.9, 3.2, 3.9, 5.2, 5.8, 4.1]; // no such transducer, but every term of the formula counts
  test.each([[23, spans], [-40, spans], [120, spans], [23, steep], [60, steep], [-14, steep]])(
    'span effect at reference %d: standard error is s·√Σ(∂/∂span)², each reading moved in turn, %j', (reference, readings) => {
      const { span } = report(temperatures, zeros, readings, reference);
      const { residualSd } = exactFit(temperatures, readings, 1, true);
      const step = 1e-5;
      const moved = (i: number, by: number) => report(temperatures, zeros, readings.map((value, k) => (k === i ? value + by : value)), reference).span.value;
      const sum = readings.reduce((total, _, i) => total + ((moved(i, step) - moved(i, -step)) / (2 * step)) ** 2, 0);
      expectDigits(span.error as number, residualSd * Math.sqrt(sum), 6);
    },
  );
  test('values are those of TEMPEFFECT', () => {
    const { zero, span } = report(temperatures, zeros, spans, 20);
    expect(table('TEMPEFFECT', column(...temperatures), column(...zeros), column(...spans), 20, false)).toEqual([[zero.value, span.value]]);
  });
  test('another unit of output scales the zero effect with its error and leaves the span effect alone', () => {
    const here = report(temperatures, zeros, spans);
    const other = report(temperatures, zeros.map((z) => z * 500), spans.map((s) => s * -500));
    expectDigits(other.zero.error as number, 500 * (here.zero.error as number), 10);
    expectDigits(other.span.value, here.span.value, 10);
    expectDigits(other.span.error as number, here.span.error as number, 10);
  });
  test('a missed zero leaves the spans their own n', () => {
    const { zero, span } = report(temperatures, [null, ...zeros.slice(1)], spans);
    expect([zero.n, span.n]).toEqual([6, 7]);
  });
  test('two temperatures leave the standard errors blank', () => {
    const { zero, span } = report([3, 43], [0.01, 0.014], [2, 2.004]);
    expect([zero.error, span.error]).toEqual(['', '']);
  });
  test('the table is headed, unless told otherwise', () => {
    expect(table('TEMPREPORT', [[3, 23, 43]], [[0, 0, 0]], [[2, 2, 2]])).toEqual([
      ['Effect', 'Value', 'Standard error', 'n'], ['Zero effect', 0, 0, 3], ['Span effect', 0, 0, 3],
    ]);
  });
  test('spans that the line takes to 0 at the reference are refused', () => {
    expect(fault('TEMPREPORT', column(0, 10, 20), column(0, 0, 0), column(0, 1, 2), 0)).toBe('#VALUE!: spans: the fitted span at 0 degrees is 0; expected an output');
  });
});
