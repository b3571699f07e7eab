/** Whatever stands in the cells, a function gives a value or a worded error: no NaN, no Infinity, no hang, no bare failure. */
import fc from 'fast-check';
import metadata from '../../build/functions.json';
import { callFunction, type Argument } from '../../src/functions/call';
import type { Cell } from '../../src/functions/cells';
import { CellFault } from '../../src/functions/faults';

const RUNS = 500;

const number = fc.oneof(
  { weight: 6, arbitrary: fc.double({ min: -3, max: 3, noNaN: true }) },
  { weight: 6, arbitrary: fc.integer({ min: -5, max: 100 }) },
  { weight: 1, arbitrary: fc.constantFrom(0, -0, 1e308, -1e308, 1e-308, 5e-324, Infinity, -Infinity, NaN, Number.MAX_SAFE_INTEGER, 1e154, 1e-160) },
);
const cell: fc.Arbitrary<Cell> = fc.oneof(
  { weight: 12, arbitrary: number },
  { weight: 2, arbitrary: fc.constantFrom<Cell>(null, undefined, '') },
  { weight: 1, arbitrary: fc.constantFrom<Cell>('abc', '1,5', ' ', 'AA', 'terminal', '=1+1', '🦀', true, false) },
  { weight: 1, arbitrary: fc.constantFrom('#DIV/0!', '#N/A', '#REF!', '#NAME?').map((code) => new CellFault(code as '#N/A', '')) },
);
const sound = fc.oneof(fc.double({ min: 0, max: 100, noNaN: true }), fc.integer({ min: 0, max: 10 }));

/** Ranges: mostly columns of a shared length so that the arithmetic is reached; also ragged, single cells, rows, empty. */
const range = (rows: number): fc.Arbitrary<Argument> => fc.oneof(
  { weight: 6, arbitrary: fc.array(sound, { minLength: rows, maxLength: rows }).map((list) => list.map((value) => [value])) },
  { weight: 3, arbitrary: fc.array(fc.tuple(sound, sound), { minLength: rows, maxLength: rows }) },
  { weight: 3, arbitrary: fc.array(cell, { minLength: rows, maxLength: rows }).map((list) => list.map((value) => [value])) },
  { weight: 1, arbitrary: fc.array(fc.array(cell, { maxLength: 4 }), { maxLength: 6 }) },
  { weight: 1, arbitrary: fc.array(cell, { minLength: 1, maxLength: 6 }).map((row) => [row]) },
  { weight: 1, arbitrary: cell },
  { weight: 1, arbitrary: number.map((value) => Array.from({ length: rows }, () => [value])) },
);
const word = fc.constantFrom('initial', 'average', 'interpolated', 'response', 'force', 'terminal', 'bestfit', 'zerofit', 'minimax', 'AA', 'A');
const scalar: fc.Arbitrary<Argument> = fc.oneof(
  { weight: 4, arbitrary: fc.integer({ min: 1, max: 5 }) },
  { weight: 2, arbitrary: word },
  { weight: 3, arbitrary: cell },
  { weight: 1, arbitrary: range(2) },
);

function argumentsOf(parameters: readonly { dimensionality?: string; optional?: boolean }[]): fc.Arbitrary<Argument[]> {
  return fc.integer({ min: 1, max: 14 }).chain((rows) =>
    fc.tuple(...parameters.map((parameter) => {
      const one = parameter.dimensionality === 'matrix' ? range(rows) : scalar;
      return parameter.optional ? fc.option(one, { nil: null }) : one;
    })));
}

function expectValueOrWordedError(id: string, args: readonly Argument[]): void {
  try {
    const result = callFunction(id, args);
    for (const value of Array.isArray(result) ? result.flat() : [result]) expectCell(value);
    if (Array.isArray(result)) expectRectangle(result);
  } catch (error) {
    expectWorded(error);
  }
}

function expectCell(value: unknown): void {
  if (value instanceof CellFault) return expectWorded(value);
  if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`found ${value} in a cell`);
  if (!['number', 'string', 'boolean'].includes(typeof value)) throw new Error(`found ${String(value)} in a cell`);
}

function expectRectangle(block: readonly (readonly unknown[])[]): void {
  if (block.length === 0 || block.some((row) => row.length !== block[0].length || row.length === 0)) throw new Error('not a rectangle');
}

function expectWorded(error: unknown): void {
  if (!(error instanceof CellFault)) throw error;
  if (error.message.length < 10 || /failed inside|undefined|NaN(?!; expected)|\[object/.test(error.message)) {
    throw new Error(`not worded: ${error.code} ${error.message}`);
  }
}

/** Ranges whose size or uniformity is the trouble, each in place of every range argument. */
const big = 10_000;
const troubles: Record<string, () => Argument> = {
  '10 000 rows rising': () => Array.from({ length: big }, (_, i) => [i]),
  '10 000 rows up and down': () => Array.from({ length: big }, (_, i) => [Math.min(i, big - 1 - i)]),
  '10 000 equal numbers': () => Array.from({ length: big }, () => [7]),
  '10 000 blanks': () => Array.from({ length: big }, () => [null]),
  '10 000 rows of noise': () => Array.from({ length: big }, (_, i) => [i === 0 ? 0 : Math.abs(Math.sin(i * 12.9898)) * 100]),
  '10 000 columns': () => [Array.from({ length: big }, (_, i) => i)],
  'one number': () => [[1]],
  'one blank': () => [[null]],
  'no row': () => [],
  'constant force': () => [[0], [5], [5], [5], [0]],
  'huge numbers': () => [[0], [1e307], [1.5e308]],
  'tiny numbers': () => [[0], [5e-324], [1e-323], [1e-310]],
  'huge beside tiny': () => [[0], [1e-300], [1e300], [1]],
  'infinities': () => [[0], [Infinity], [-Infinity]],
  'nearly equal forces': () => [[0], [1], [1 + 2 ** -52], [1 + 2 ** -51], [2]],
};

describe.each(metadata.functions.map(({ id, parameters }) => [id, parameters] as const))('PROVE.%s', (id, parameters) => {
  test(`${RUNS} hostile inputs give a value or a worded error`, () => {
    const started = Date.now();
    fc.assert(fc.property(argumentsOf(parameters), (args) => expectValueOrWordedError(id, args)), { numRuns: RUNS, seed: 42 });
    expect(Date.now() - started).toBeLessThan(20_000);
  });

  test.each(Object.keys(troubles))('%s: a value or a worded error, within five seconds', (trouble) => {
    for (const last of [2, 'AA', null]) {
      const args = parameters.map((parameter) => {
        if ('dimensionality' in parameter && parameter.dimensionality === 'matrix') return troubles[trouble]();
        return 'optional' in parameter && parameter.optional ? null : last ?? 1;
      });
      const started = Date.now();
      expectValueOrWordedError(id, args);
      expect(Date.now() - started).toBeLessThan(5_000);
    }
  });
});
