import fc from 'fast-check';
import { proposeReadings, runRanges } from '../../../src/worksheets/logger/proposals';
import { readLog } from '../../../src/worksheets/logger/readLog';
import { suggestedOptions } from '../../../src/worksheets/logger/steady';
import { type Stretch, steadyStretches } from '../../../src/worksheets/logger/stretch';
import { traceFrom, traceOf } from '../../../src/worksheets/logger/trace';
import { clock, type LogPlan, outputs, simulatedLog, TEN_POINT, type Writing, written } from './simulatedLog';

const LEVELS = outputs(TEN_POINT);
const WRITINGS: readonly [string, Writing][] = [
  ['commas and decimal point', { delimiter: ',', decimal: '.', head: 'Time [s],Signal [mV/V]' }],
  ['semicolons and decimal comma', { delimiter: ';', decimal: ',', head: 'Time (s);Signal (mV/V)' }],
  ['tabs and a clock with decimal comma', { delimiter: '\t', decimal: ',', time: (at) => clock(at, ','), end: '\r\n' }],
  ['blanks and decimal point, no head', { delimiter: '  ', decimal: '.' }],
  ['three channels', { delimiter: ';', decimal: ',', head: 'Time / s;Signal / mV/V;Force / kN;Temperature / °C', others: [(value) => 10 * value, () => 23] }],
];
const FAULTS: readonly [string, Omit<LogPlan, 'levels' | 'seed'>][] = [
  ['little noise', {}],
  ['much noise', { noise: 2e-3 }],
  ['drift', { drift: 2e-6 }],
  ['spikes', { spikes: 0.02 }],
  ['samples without a value', { blank: 0.05 }],
  ['dropped samples', { dropped: 0.1 }],
  ['all at once', { noise: 3e-4, drift: 1e-6, spikes: 0.01, blank: 0.02, dropped: 0.05 }],
  ['slow changes', { change: 15, noise: 1e-4 }],
  ['steps within a sample', { change: 0, noise: 1e-4 }],
  ['one sample a second', { interval: 1, noise: 1e-4, hold: 30 }],
];

function stretchesIn(text: string, channel = 0): Stretch[] {
  const log = readLog(text);
  const trace = traceOf(log, log.channels[channel]);
  return steadyStretches(trace, suggestedOptions(trace));
}

/** Five standard deviations of the mean, the step of the record, and a drift over a tenth of the hold: the ends are not found to the second. */
function bound({ scatter, n }: Stretch, { drift = 0, hold = 20 }: Omit<LogPlan, 'levels' | 'seed'>): number {
  return 5 * scatter / Math.sqrt(n) + 1e-5 + drift * hold * 0.1;
}

describe.each(WRITINGS)('a log with %s', (_, writing) => {
  test.each(FAULTS)('gives every reading back within its scatter: %s', (_, faults) => {
    for (const seed of [1, 2]) {
      const log = simulatedLog({ levels: LEVELS, seed, ...faults });
      const { points } = proposeReadings(stretchesIn(written(log, writing)), TEN_POINT);
      points.forEach(({ stretch }, i) => {
        expect(stretch).toBeDefined();
        expect(Math.abs(stretch!.mean - log.truth[i])).toBeLessThan(bound(stretch!, faults));
        expect(stretch!.scatter).toBeLessThan(1.3 * (faults.noise ?? 2e-5) + 1e-5);
      });
    }
  });
});

test('the scatter is that of the noise, though the level drifts and spikes stand in it', () => {
  const log = simulatedLog({ levels: LEVELS, seed: 7, noise: 4e-4, drift: 1e-5, spikes: 0.02, hold: 40 });
  const stretches = stretchesIn(written(log, WRITINGS[0][1]));
  const mean = stretches.reduce((sum, { scatter }) => sum + scatter, 0) / stretches.length;
  expect(mean).toBeGreaterThan(4e-4 * 0.93);
  expect(mean).toBeLessThan(4e-4 * 1.07);
  expect(stretches.reduce((sum, { spikes }) => sum + spikes, 0)).toBeGreaterThan(50);
  for (const { drift, from, to } of stretches) expect(drift / (to - from)).toBeCloseTo(1e-5, 5);
});

test('three runs in one log, each returning to zero, are told apart', () => {
  const log = simulatedLog({ levels: [...LEVELS, ...LEVELS.slice(1), ...LEVELS.slice(1)], seed: 5, noise: 1e-4 });
  const stretches = stretchesIn(written(log, WRITINGS[1][1]));
  expect(runRanges(stretches, TEN_POINT, 9)).toEqual([{ from: 0, to: 15 }, { from: 15, to: 30 }, { from: 30, to: 45 }]);
});

test('three preloads before the run are passed over, even beyond its greatest force', () => {
  const log = simulatedLog({ levels: [...outputs([0, 105, 0, 105, 0, 105]), ...LEVELS], seed: 5, noise: 1e-4 });
  const { points, notes } = proposeReadings(stretchesIn(written(log, WRITINGS[0][1])), TEN_POINT);
  expect(points.map(({ stretch }) => stretch?.number)).toEqual(TEN_POINT.map((_, i) => i + 7));
  expect(notes).toEqual(['6 steady stretches not used: 6 before the run.']);
});

test('zeros between the loads are passed over', () => {
  const steps = [0, 20, 0, 40, 0, 60, 0, 80, 0, 100, 0];
  const log = simulatedLog({ levels: outputs(steps), seed: 3, noise: 1e-4 });
  const { points } = proposeReadings(stretchesIn(written(log, WRITINGS[0][1])), [0, 20, 40, 60, 80, 100, 0]);
  expect(points.map(({ stretch }) => stretch?.number)).toEqual([1, 2, 4, 6, 8, 10, 11]);
});

test('compression with an inverted signal is matched, and its sign is told', () => {
  const log = simulatedLog({ levels: LEVELS, seed: 3, noise: 1e-4 });
  const { points, notes } = proposeReadings(stretchesIn(written(log, WRITINGS[0][1])), TEN_POINT.map((share) => -share));
  expect(points.map(({ stretch }) => stretch?.number)).toEqual(TEN_POINT.map((_, i) => i + 1));
  expect(notes).toEqual([expect.stringContaining('Turn the sign')]);
});

test('a point that was not loaded is left without a reading, and said', () => {
  const log = simulatedLog({ levels: LEVELS.filter((_, i) => i !== 4), seed: 3, noise: 1e-4 });
  const { points, notes } = proposeReadings(stretchesIn(written(log, WRITINGS[0][1])), TEN_POINT);
  expect(points.map(({ stretch }) => stretch?.number)).toEqual([1, 2, 3, 4, undefined, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15]);
  expect(notes[0]).toMatch(/^1 point of 16 has no stretch: point 5 \(40\)\./);
});

test('two points loaded in the wrong order are said to be so', () => {
  const log = simulatedLog({ levels: outputs([0, 20, 60, 40, 80, 100, 0]), seed: 3, noise: 1e-4 });
  const { notes } = proposeReadings(stretchesIn(written(log, WRITINGS[0][1])), [0, 20, 40, 60, 80, 100, 0]);
  expect(notes[0]).toMatch(/though stretch \d would fit it in another order/);
});

test('a log of one level proposes nothing for a run', () => {
  const log = simulatedLog({ levels: [0.5], seed: 3 });
  const { points, notes } = proposeReadings(stretchesIn(written(log, WRITINGS[0][1])), TEN_POINT);
  expect(points.every(({ stretch }) => stretch === undefined)).toBe(true);
  expect(notes).toEqual(['The log has 1 steady stretch; the run has 16 points.']);
});

test('a reading from the end of the stretch takes its last seconds alone', () => {
  const log = simulatedLog({ levels: LEVELS, seed: 3, drift: 1e-4, noise: 1e-5, hold: 30 });
  const trace = traceFrom(Float64Array.from(log.time), Float64Array.from(log.values));
  const options = suggestedOptions(trace);
  const whole = steadyStretches(trace, options);
  const ends = steadyStretches(trace, { ...options, last: 10 });
  whole.slice(0, -1).forEach((stretch, i) => {
    expect(ends[i].n).toBeGreaterThanOrEqual(99);
    expect(ends[i].n).toBeLessThanOrEqual(101);
    expect(ends[i].mean - stretch.mean).toBeCloseTo(1e-4 * (stretch.to - stretch.from - 10) / 2, 4);
  });
});

test('shifting and scaling a trace shifts and scales its readings, and nothing else', () => {
  const log = simulatedLog({ levels: LEVELS, seed: 11, noise: 2e-4, spikes: 0.01, hold: 10 });
  const time = Float64Array.from(log.time);
  const found = (values: Float64Array) => steadyStretches(traceFrom(time, values), suggestedOptions(traceFrom(time, values)));
  const before = found(Float64Array.from(log.values));
  fc.assert(fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.constantFrom(-1000, -1, 0.5, 2, 128), (shift, scale) => {
    const after = found(Float64Array.from(log.values, (value) => scale * value + shift));
    expect(after.map(({ number }) => number)).toEqual(before.map(({ number }) => number));
    after.forEach(({ mean, scatter }, i) => {
      expect((mean - shift) / scale).toBeCloseTo(before[i].mean, 4);
      expect(scatter / Math.abs(scale)).toBeCloseTo(before[i].scatter, 4);
    });
  }), { numRuns: 20 });
});
