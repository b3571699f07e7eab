/** What must not matter to a force-proving instrument does not; random series by fast-check, no expected value from the code. */
import fc from 'fast-check';
import { callFunction, type Argument } from '../../src/functions/call';
import type { Cell } from '../../src/functions/cells';
import { CellFault } from '../../src/functions/faults';
import { iso376 } from '../published';
import { column, table } from './call';

interface Instrument {
  readonly forces: number[];
  readonly series: number[][];
  readonly resolution: number;
  readonly zeros: number[][];
  readonly creep: number[] | null;
}

/** Five to ten steps up to 100, about 2 mV/V, with errors that reach from class 00 to none. */
const instrument: fc.Arbitrary<Instrument> = fc.tuple(fc.integer({ min: 5, max: 10 }), fc.integer({ min: 1, max: 60 })).chain(([steps, size]) => {
  const forces = Array.from({ length: steps }, (_, i) => (100 * (i + 1)) / steps);
  const errors = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 6, maxLength: 6 });
  return fc.tuple(
    fc.array(errors, { minLength: steps, maxLength: steps }), fc.integer({ min: 0, max: 30 }), fc.integer({ min: -100, max: 100 }),
    fc.option(fc.integer({ min: -500, max: 500 }), { nil: null }),
  ).map(([all, resolution, zero, creep]) => ({
    forces,
    series: forces.map((force, i) => all[i].map((error) => 0.02 * force * (1 + error * size * 1e-6))),
    resolution: resolution * 1e-3,
    zeros: [[0.01, 0.01], [0.01, 0.01 + zero * size * 1e-7]],
    creep: creep === null ? null : [2, 2 + creep * 1e-6],
  }));
});

const force = (factor: number) => (it: Instrument): Instrument => ({ ...it, forces: it.forces.map((f) => f * factor), resolution: it.resolution * Math.abs(factor) });
const output = (factor: number) => (it: Instrument): Instrument => ({
  ...it,
  series: it.series.map((row) => row.map((x) => x * factor)),
  zeros: it.zeros.map((row) => row.map((x) => x * factor)),
  creep: it.creep && it.creep.map((x) => x * factor),
});
const changes: Record<string, (it: Instrument) => Instrument> = {
  'the unit of force': force(4448.2216),
  'the unit of output': output(250),
  'direction, tension or compression': (it) => output(-1)(force(-1)(it)),
  'the order of the rows': (it) => ({ ...it, forces: [...it.forces].reverse(), series: [...it.series].reverse() }),
  'zero rows': (it) => ({ ...it, forces: [0, ...it.forces, 0], series: [Array(6).fill(0), ...it.series, Array(6).fill(0.001)] }),
};

const figures = ({ forces, series }: Instrument) => table('FORCEPROVING', column(...forces), series, 2, false);
const testsOf = ({ forces, series, resolution, zeros, creep }: Instrument) => [column(...forces), series, 2, resolution, zeros, creep && [creep], 0.0001] as Argument[];
const classesOf = (it: Instrument, limits: Cell[][] | null = null) => table('FORCECLASS', ...testsOf(it), limits, false);
const rangesOf = (it: Instrument, limits: Cell[][] | null = null) => table('FORCECLASSRANGE', ...testsOf(it), limits, false);
const wordsOf = (rows: any[][], columns: number[]) => rows.map((row) => columns.map((at) => row[at]));

describe.each(Object.entries(changes))('a force-proving instrument does not depend on %s', (_, change) => {
  test('b, b′, fc, v', () => fc.assert(fc.property(instrument, (it) => {
    const [here, there] = [figures(it), figures(change(it))];
    here.forEach((row, i) => row.slice(3).forEach((value, j) => expect(Math.abs(there[i][j + 3] - value)).toBeLessThan(1e-12)));
  }), { numRuns: 60, seed: 11 }));
  test('classes and what limits them', () => fc.assert(fc.property(instrument, (it) => {
    const changed = change(it);
    expect(wordsOf(classesOf(changed), [1])).toEqual(wordsOf(classesOf(it), [1]));
    expect(wordsOf(rangesOf(changed), [0, 7])).toEqual(wordsOf(rangesOf(it), [0, 7]));
    const unit = Math.max(...changed.forces.map(Math.abs)) / 100;
    rangesOf(it).forEach(([, from], i) => {
      const found = rangesOf(changed)[i][1];
      if (typeof from === 'number') expect(found / unit).toBeCloseTo(from, 9);
      else expect(found).toBe(from);
    });
  }), { numRuns: 60, seed: 12 }));
  test('W', () => fc.assert(fc.property(instrument, (it) => {
    const expanded = (one: Instrument) => table('FORCEUNCERTAINTY', ...testsOf(one), 0.0003, false).map((row) => row[10]);
    const there = expanded(change(it));
    expanded(it).forEach((value, i) => expect(Math.abs(there[i] - value)).toBeLessThan(1e-12));
  }), { numRuns: 60, seed: 13 }));
});

describe('classes', () => {
  test('the random instruments reach every class, and none', () => {
    const seen = new Set(fc.sample(instrument, { numRuns: 200, seed: 14 }).flatMap((it) => classesOf(it).map((row) => row[1])));
    expect([...seen].sort()).toEqual(['0.5', '00', '1', '2', 'none']);
  });
  test('a perfect instrument is class 00 at every force, over the whole range, with all parameters judged', () => {
    fc.assert(fc.property(
      fc.integer({ min: 4, max: 12 }), fc.double({ min: 0.001, max: 1000, noNaN: true }), fc.double({ min: -0.01, max: 0.01, noNaN: true }),
      (steps, slope, curve) => {
        const forces = Array.from({ length: steps }, (_, i) => (i + 1) / steps);
        const series = forces.map((f) => Array<number>(6).fill(slope * f * (1 + curve * f)));
        const args: Argument[] = [column(...forces), series, 2, 0, [[0, 0]], null, 0, null, false];
        expect(table('FORCECLASS', ...args)).toEqual(forces.map((f) => [f, '00', '', '', '', '']));
        expect(table('FORCECLASSRANGE', ...args)[0]).toEqual(['00', forces[0], 1, 'lowest force applied', forces[0], '', '', '']);
      },
    ), { numRuns: 100, seed: 15 });
  });
  test('widening any limit never worsens a class nor narrows its range', () => {
    const order = ['00', '0.5', '1', '2', 'none'];
    const standard: number[][] = order.slice(0, 4).map((name) => Object.values<number>(iso376.classes[name]).map((percent) => percent / 100));
    fc.assert(fc.property(instrument, fc.nat(3), fc.nat(6), fc.double({ min: 1, max: 4, noNaN: true }), (it, row, at, factor) => {
      const wider = standard.map((line, i) => line.map((limit, j) => (i === row && j === at ? limit * factor : limit)));
      const [before, after] = [classesOf(it, standard), classesOf(it, wider)];
      before.forEach(([, name], i) => expect(order.indexOf(after[i][1])).toBeLessThanOrEqual(order.indexOf(name)));
      const [old, now] = [rangesOf(it, standard), rangesOf(it, wider)];
      const start = (from: unknown) => (typeof from === 'number' ? from : Infinity);
      old.forEach(([, from], i) => expect(start(now[i][1])).toBeLessThanOrEqual(start(from)));
    }), { numRuns: 200, seed: 16 });
  });
  test('the standard limits, given as a block, change nothing', () => {
    const standard = ['00', '0.5', '1', '2'].map((name) => Object.values<number>(iso376.classes[name]).map((percent) => percent / 100));
    fc.assert(fc.property(instrument, (it) => expect(rangesOf(it, standard)).toEqual(rangesOf(it))), { numRuns: 50, seed: 17 });
  });
});

test('the raised uncertainty equation lies below W at no force, whatever the form', () => {
  const points = fc.uniqueArray(fc.integer({ min: 1, max: 500 }), { minLength: 4, maxLength: 10 }).chain((forces) =>
    fc.tuple(fc.constant(forces), fc.array(fc.integer({ min: 0, max: 5000 }), { minLength: forces.length, maxLength: forces.length })));
  fc.assert(fc.property(points, fc.constantFrom('inverse', 'linear', 'quadratic'), ([forces, parts], form) => {
    const [[, , a1, a2, shortfall, , raised]] = table('FORCEUNCERTAINTYFIT', column(...forces), column(...parts.map((w) => w * 1e-6)), form, false);
    expect(shortfall).toBeGreaterThanOrEqual(0);
    forces.forEach((f, i) => {
      const at = form === 'inverse' ? raised + a1 / f : raised + a1 * f + (a2 === '' ? 0 : a2 * f * f);
      expect(at).toBeGreaterThanOrEqual(parts[i] * 1e-6 - 1e-14);
    });
  }), { numRuns: 200, seed: 18 });
});

describe('whatever stands in six columns, a force-proving function gives a value or a worded error', () => {
  const number = fc.oneof(
    { weight: 8, arbitrary: fc.double({ min: 0.5, max: 3, noNaN: true }) },
    { weight: 1, arbitrary: fc.constantFrom(0, -1, 1e308, -1e308, 1.7e308, 1e-308, 5e-324, Infinity, NaN) },
  );
  const blankable = fc.oneof({ weight: 9, arbitrary: number }, { weight: 1, arbitrary: fc.constantFrom<Cell>(null, '', 'x', true) });
  const anything = fc.integer({ min: 3, max: 6 }).chain((rows) => fc.tuple(
    fc.uniqueArray(fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 0, max: 99 }) }, { weight: 1, arbitrary: number }), { minLength: rows, maxLength: rows }),
    fc.oneof({ weight: 3, arbitrary: fc.array(fc.array(number, { minLength: 6, maxLength: 6 }), { minLength: rows, maxLength: rows }) },
      { weight: 1, arbitrary: fc.array(fc.array(blankable, { minLength: 6, maxLength: 6 }), { minLength: rows, maxLength: rows }) }),
    fc.integer({ min: 1, max: 3 }), fc.option(number, { nil: null }), fc.option(fc.array(fc.tuple(number, number), { minLength: 1, maxLength: 3 }), { nil: null }),
    fc.option(fc.tuple(number, number).map((pair) => [pair]), { nil: null }), fc.option(number, { nil: null }),
  ));
  test.each(['FORCEPROVING', 'FORCECLASS', 'FORCECLASSRANGE', 'FORCEUNCERTAINTY'])('PROVE.%s', (id) => {
    let values = 0;
    fc.assert(fc.property(anything, (args) => {
      try {
        const result = callFunction(id, withColumn(args as Argument[]).slice(0, id === 'FORCEPROVING' ? 3 : 7));
        if (!Array.isArray(result)) throw new Error('not a table');
        values += 1;
        expect(result.flat().every((cell) => typeof cell === 'string' || Number.isFinite(cell))).toBe(true);
      } catch (error) {
        if (!(error instanceof CellFault) || error.message.length < 10 || /failed inside|undefined/.test(error.message)) throw error;
      }
    }), { numRuns: 500, seed: 19 });
    expect(values).toBeGreaterThan(20);
  });

  function withColumn([forces, ...rest]: Argument[]): Argument[] {
    return [(forces as unknown as number[]).map((value) => [value]), ...rest];
  }
});
