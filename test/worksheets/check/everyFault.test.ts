import fc from 'fast-check';
import { checkSheet, type Finding } from '../../../src/worksheets/check/checkSheet';
import { address } from '../../../src/worksheets/planBuilder';
import { points, READINGS, simulatedSheet, SOUND, TEN_UP, UP_DOWN, type SampleSheet } from '../sampleSheet';

const RUNS = 3;
const courses = fc.constantFrom(UP_DOWN, TEN_UP);
const capacities = fc.constantFrom(0.5, -20, 1e5);

/** The sheet, and the cell of a reading by its row in the block and its run. */
function sample(percents: readonly number[], capacity: number, seed: number) {
  const sheet = simulatedSheet([{ ...SOUND, id: 'b', runs: RUNS, forces: points(capacity, percents) }], seed, 2);
  return { sheet, cell: (row: number, run: number) => address(READINGS.column + run, READINGS.row + row) };
}

/** A reading as it is typed, and the net reading that the sheet makes of it. */
function type(sheet: SampleSheet, row: number, run: number, reading: number): void {
  const zero = sheet.number(address(READINGS.column + run, READINGS.row));
  sheet.put(address(READINGS.column + run, READINGS.row + row), reading);
  sheet.put(address(READINGS.column + RUNS + run, READINGS.row + row), Number((reading - zero).toFixed(7)));
}

function findingAt(sheet: SampleSheet, at: string): Finding | undefined {
  return checkSheet(sheet.read()).find((finding) => finding.at === at && finding.severity !== 'missing');
}

/** A course, a capacity, a seed, a run, and a row under load. */
const place = fc.tuple(courses, capacities, fc.nat(), fc.integer({ min: 0, max: RUNS - 1 }), fc.integer({ min: 1, max: 9 }));

describe('in any run of any sheet', () => {
  test('two neighbours that are swapped look swapped', () => {
    fc.assert(fc.property(place, ([percents, capacity, seed, run, row]) => {
      fc.pre(row < 9);
      const { sheet, cell } = sample(percents, capacity, seed);
      const [one, other] = [sheet.number(cell(row, run)), sheet.number(cell(row + 1, run))];
      type(sheet, row, run, other);
      type(sheet, row + 1, run, one);
      expect(findingAt(sheet, cell(row, run))?.message).toMatch(/they look swapped$/);
    }));
  });

  test('a slipped decimal point is found', () => {
    fc.assert(fc.property(place, fc.constantFrom(10, 0.1, 100), ([percents, capacity, seed, run, row], factor) => {
      const { sheet, cell } = sample(percents, capacity, seed);
      type(sheet, row, run, sheet.number(cell(row, run)) * factor);
      expect(findingAt(sheet, cell(row, run))).toBeDefined();
    }));
  });

  test('a reading that is off by half a per cent of output or more is found', () => {
    fc.assert(fc.property(place, fc.double({ min: 0.005, max: 3, noNaN: true }), fc.boolean(), ([percents, capacity, seed, run, row], share, up) => {
      const { sheet, cell } = sample(percents, capacity, seed);
      type(sheet, row, run, Number((sheet.number(cell(row, run)) + (up ? 2 : -2) * share).toFixed(5)));
      expect(findingAt(sheet, cell(row, run))).toBeDefined();
    }));
  });

  test('a reading that is left out, or is text, is found there', () => {
    fc.assert(fc.property(place, ([percents, capacity, seed, run, row]) => {
      const { sheet, cell } = sample(percents, capacity, seed);
      const at = cell(row, run);
      expect(checkSheet(sheet.put(at, null).read())).toEqual([{ severity: 'missing', at, message: `Run ${run + 1}: 1 of ${percents.length} readings is empty, ${at}` }]);
      expect(findingAt(sheet.put(at, '?'), at)?.severity).toBe('wrong');
    }));
  });

  test('no content of cells makes the check fail', () => {
    const value = fc.oneof(fc.constant(null), fc.double({ noNaN: true, noDefaultInfinity: true }), fc.string(), fc.boolean(), fc.record({ error: fc.constantFrom('#N/A', '#VALUE!', '#SPILL!', '#NAME?') }));
    fc.assert(fc.property(courses, fc.array(fc.tuple(fc.integer({ min: 1, max: 10 }), fc.integer({ min: 2, max: 22 }), value), { maxLength: 60 }), (percents, changes) => {
      const { sheet } = sample(percents, 20, 1);
      changes.forEach(([column, row, content]) => sheet.put(address(column, row), content));
      const cells = new Set(Array.from({ length: 40 }, (_, i) => i + 1));
      for (const { at, message } of checkSheet(sheet.read())) {
        expect(cells.has(Number(/^[A-Z]+(\d+)$/.exec(at)?.[1]))).toBe(true);
        expect(message).not.toMatch(/NaN|undefined|\[object/);
      }
    }), { numRuns: 300 });
  });
});
