import fc from 'fast-check';
import { checkSheet, type Finding } from '../../../src/worksheets/check/checkSheet';
import { points, SampleSheet, simulatedSheet, SOUND, TEN_UP, UP_DOWN, type Simulated } from '../sampleSheet';

const courses = fc.constantFrom(
  { percents: [0, 100, 0], degree: undefined },
  { percents: [0, 50, 100], degree: undefined },
  { percents: UP_DOWN, degree: undefined },
  { percents: [0, 20, 40, 60, 80, 100, 60, 20, 0], degree: undefined },
  { percents: TEN_UP, degree: 2 },
  { percents: [...TEN_UP.slice(0, -1), 90, 70, 50, 30, 10, 0], degree: 3 },
  { percents: [0, 1, 2, 5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100, 0], degree: 1 },
  { percents: [0, 10, 0, 50, 0, 100, 0], degree: undefined },
);
const directions = fc.constantFrom(
  ['tension'], ['compression'], ['tension', 'compression'], ['clockwise', 'counter_clockwise'], ['as_found_tension', 'as_left_tension'],
);

/** Transducers as good as a bench sees them, from fine to middling. */
const transducer = fc.record({
  runs: fc.integer({ min: 1, max: 4 }),
  output: fc.constantFrom(2, -2, 3, 1.5, 20_000, 500),
  steps: fc.constantFrom(500, 2_000, 20_000, 60_000, 400_000),
  scatter: fc.double({ min: 1e-5, max: 2e-4, noNaN: true }),
  curvature: fc.double({ min: -1e-3, max: 1e-3, noNaN: true }),
  hysteresis: fc.double({ min: -5e-4, max: 5e-4, noNaN: true }),
  rotation: fc.double({ min: 0, max: 3e-4, noNaN: true }),
  zeroDrift: fc.double({ min: -4e-4, max: 4e-4, noNaN: true }),
  zeroBalance: fc.double({ min: -0.02, max: 0.02, noNaN: true }),
});

function blocksOf(ids: readonly string[], percents: readonly number[], capacity: number, { steps, ...kind }: any): Simulated[] {
  return ids.map((id) => {
    const sign = /compression|counter/.test(id) ? -1 : 1;
    return { ...kind, id, forces: points(capacity, percents).map((force) => (force === 0 ? 0 : sign * force)), resolution: Math.abs(kind.output) / steps };
  });
}

/** Findings of the statistical test, which by its nature calls a sound reading an outlier now and then. */
function isOutlier({ message }: Finding): boolean {
  return message.includes('from all the other readings');
}

describe('a sound sheet', () => {
  test('gives no finding, whatever the transducer, the course of forces and the number of runs; an outlier in no more than 1 % of sheets', () => {
    let sheets = 0;
    let alarms = 0;
    fc.assert(fc.property(courses, directions, transducer, fc.constantFrom(0.5, 20, 1e6), fc.nat(), (course, ids, kind, capacity, seed) => {
      const steps = course.degree === undefined ? kind.steps : 400_000;
      const sheet = simulatedSheet(blocksOf(ids, course.percents, capacity, { ...kind, steps }), seed, course.degree);
      const findings = checkSheet(sheet.read());
      sheets += 1;
      if (findings.some(isOutlier)) alarms += 1;
      expect(findings.filter((finding) => !isOutlier(finding))).toEqual([]);
    }), { numRuns: 500 });
    expect(alarms / sheets).toBeLessThanOrEqual(0.015); // 1 % and the scatter of such a count
  });

  test('with normal scatter has an outlier about as often as the 1 % of the test says', () => {
    let alarms = 0;
    for (let seed = 0; seed < 400; seed += 1) {
      const sheet = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, TEN_UP), scatter: 0 }], seed, 2);
      alarms += checkSheet(withNormalScatter(sheet, seed).read()).length;
    }
    expect(alarms).toBeLessThanOrEqual(10); // 4 expected
  });

  test('may have no zero after the run, and a zero after each force', () => {
    for (const percents of [[0, 50, 100], [0, 20, 0, 60, 0, 100, 0], [0, 50, 100, 50, 0, 50, 100, 50, 0]]) {
      const sheet = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(10, percents) }], 3);
      expect(checkSheet(sheet.read())).toEqual([]);
    }
  });

  test('may repeat a run to the last digit if its instrument shows few steps', () => {
    const sheet = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(10, UP_DOWN), output: 500, resolution: 1, scatter: 0, rotation: 0, zeroDrift: 0 }], 3);
    expect(checkSheet(sheet.read())).toEqual([]);
  });

  test('of creep gives none either', () => {
    const times = [0, 0.5, 1, 2, 5, 10, 20, 30];
    const sheet = new SampleSheet()
      .range('times_loaded', 1, 5, times.map((time) => [time])).range('readings_loaded', 2, 5, times.map((time) => [2 + 1e-4 * Math.log1p(time)]))
      .range('times_unloaded', 4, 5, times.map((time) => [time])).range('readings_unloaded', 5, 5, times.map((time) => [1e-4 * Math.exp(-time)]))
      .single('value_creep', 'A20', 0.0001, { formula: '=PROVE.CREEP()' }).single('verdict_creep', 'B20', 'within');
    expect(checkSheet(sheet.read())).toEqual([]);
  });
});

/** Adds normal scatter of 3e-5 of output to the readings and net readings of three runs from row 11 on. */
function withNormalScatter(sheet: SampleSheet, seed: number): SampleSheet {
  let state = seed + 1;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  for (let row = 11; row < 21; row += 1) {
    ['B', 'C', 'D'].forEach((column, run) => {
      const error = 6e-5 * Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
      for (const at of [`${column}${row}`, `${'EFG'[run]}${row}`]) sheet.put(at, Number((sheet.number(at) + error).toFixed(7)));
    });
  }
  return sheet;
}
