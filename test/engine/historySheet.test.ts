/** Histories typed into the sheet: the date on which the band meets a limit, by the add-in and by plain formulas, whichever way the output moves. */
import { addressOf, rangeOf } from '../../src/hosts/address';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { builtInTemplates } from '../../src/worksheets/library';
import type { SheetPlan } from '../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import { CellError, Engine } from './bundle';

function planned(id: string, answers: Answers = {}): SheetPlan {
  const template = builtInTemplates().find((candidate) => candidate.id === id)!;
  return planSheet(template, { ...suggestedAnswers(template), ...answers }).plan!;
}

/** The plan with constants put into some of its cells. */
function typed(plan: SheetPlan, values: ReadonlyMap<string, string | number | undefined>): SheetPlan {
  return { ...plan, cells: plan.cells.map((cell) => (values.has(cell.at) ? { ...cell, formula: undefined, value: values.get(cell.at) } : cell)) };
}

function cellsOf(plan: SheetPlan, name: string): string[] {
  const { startRow, endRow, startColumn } = rangeOf(plan.names!.find((entry) => entry.name === name)!.range);
  return Array.from({ length: endRow - startRow + 1 }, (_, i) => addressOf({ row: startRow + i, column: startColumn }));
}

/** A column of values under a name, as pairs of cell and value. */
function put(plan: SheetPlan, name: string, values: readonly (string | number | undefined)[]): [string, string | number | undefined][] {
  const cells = cellsOf(plan, name);
  return values.map((value, i) => [cells[i], value]);
}

async function computed(plan: SheetPlan) {
  const engine = new Engine(engineSheets([plan]));
  await engine.calculate();
  const values = new Map(plan.cells.map(({ at }) => [at, engine.value(plan.name, at)]));
  engine.dispose();
  const value = (name: string) => values.get(cellsOf(plan, name)[0]);
  const plain = plan.names!.filter(({ name }) => name.startsWith('plain_')).map(({ name, range }) => {
    const { startRow, startColumn } = rangeOf(range);
    return [name, values.get(addressOf({ row: startRow, column: startColumn + 2 }))];
  });
  return { value, plain, faults: [...values].filter(([, found]) => found instanceof CellError).map(([at]) => [at, plan.cells.find((cell) => cell.at === at)?.formula]) };
}

function historyOf(outputs: readonly number[], found: readonly string[] = outputs.map(() => 'inside'), days = outputs.map((_, i) => 44_000 + 365 * i + (i % 3))): SheetPlan {
  const plan = planned('history');
  return typed(plan, new Map([...put(plan, 'typed_date', days), ...put(plan, 'typed_output', outputs), ...put(plan, 'typed_found', found)]));
}

describe('the date on which the band meets a limit, by the add-in and by plain formulas', () => {
  test.each<[string, readonly number[], 'upper' | 'lower' | 'none', 'day' | 'never' | 'past']>([
    ['a rising output', [2, 2.0002, 2.0005, 2.0006, 2.0009], 'upper', 'day'],
    ['a falling output', [2, 1.9998, 1.9995, 1.9994, 1.9991], 'lower', 'day'],
    ['a negative output that grows', [-2, -2.0002, -2.0005, -2.0006, -2.0009], 'lower', 'day'],
    ['scatter without drift, whose band widens', [2, 2.0002, 1.9999, 2.0002, 2], 'upper', 'day'],
    ['a line without scatter that keeps level', [2, 2, 2, 2, 2], 'none', 'never'],
    ['a line without scatter that rises', [2, 2.00025, 2.0005], 'upper', 'day'],
    ['an output that is past its limit', [2, 2.001, 2.002, 2.003, 2.0041], 'upper', 'past'],
    ['scatter that is past both limits', [2, 2.003, 1.998, 2.002, 1.999], 'lower', 'past'],
  ])('%s', async (_, outputs, side, kind) => {
    const { value, plain, faults } = await computed(historyOf(outputs));
    expect(faults).toEqual([]);
    expect(plain.filter(([, verdict]) => verdict !== 'agrees')).toEqual([]);
    const date = value('value_limit_date');
    expect(typeof date === 'number' ? 'day' : date).toBe(kind);
    expect(value('value_limit_side')).toBe(side);
  });
});

describe('next due', () => {
  test('an item found outside is due sooner by the staircase, and by reliability as many as were outside', async () => {
    const outputs = [2, 2.0001, 2.0001, 2.0003, 2.0002];
    const inside = await computed(historyOf(outputs));
    const outside = await computed(historyOf(outputs, ['inside', 'inside', 'inside', 'inside', 'outside']));
    expect(inside.value('value_interval_staircase')).toBeCloseTo(13.2, 9);
    expect(outside.value('value_interval_staircase')).toBeCloseTo(6, 9);
    expect(inside.value('value_interval_reliability')).toBe(24);
    expect(outside.value('value_interval_reliability')).toBe(6);
    expect(outside.plain.filter(([, verdict]) => verdict !== 'agrees')).toEqual([]);
    expect(Number(outside.value('value_due_earliest'))).toBeLessThan(Number(inside.value('value_due_earliest')));
  });

  test('dates out of order give the same results', async () => {
    const one = await computed(historyOf([2, 2.0002, 2.0005, 2.0006], undefined, [44_000, 44_365, 44_730, 45_100]));
    const other = await computed(historyOf([2.0002, 2, 2.0006, 2.0005], undefined, [44_365, 44_000, 45_100, 44_730]));
    for (const name of ['value_drift', 'value_limit_date', 'value_shift', 'value_change', 'value_due_band']) {
      expect(Number(other.value(name))).toBeCloseTo(Number(one.value(name)), 6);
    }
  });

  test('two calibrations, or a date without an output, leave everything open', async () => {
    for (const plan of [historyOf([2, 2.0001]), historyOf([2, 2.0001, 2.0002], undefined, [44_000, 44_365, 44_730, 45_100])]) {
      const { value, faults } = await computed(plan);
      expect(faults).toEqual([]);
      expect(['value_drift', 'value_limit_date', 'value_shift', 'value_interval_staircase', 'value_due_earliest'].map(value)).toEqual(['', '', '', '', '']);
      expect(value('verdict_overall')).toBe('open: readings are missing');
    }
  });
});

describe('a thermal sheet', () => {
  test('computes a left-out temperature away where fewer are needed, and waits where a row is begun', async () => {
    const filled = withInventedReadings(planned('thermal', { temperatures: '-10 5 23 50' }));
    const columns = ['typed_temperature', 'typed_soak', 'typed_zero', 'typed_loaded'];
    const without = new Map<string, number | undefined>(columns.map((name) => [cellsOf(filled, name)[1], undefined]));
    const needed = cellsOf(filled, 'needed_rows')[0];
    const left = await computed(typed(filled, new Map([...without, [needed, 3]])));
    expect(left.faults).toEqual([]);
    expect(typeof left.value('value_span_deviation')).toBe('number');
    const [temperatures, zeros] = ['typed_temperature', 'typed_zero'].map((name) => cellsOf(filled, name).map((at) => Number(filled.cells.find((cell) => cell.at === at)!.value)).filter((__, i) => i !== 1));
    const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value / values.length, 0);
    const [t, z] = [mean(temperatures), mean(zeros)];
    const slope = temperatures.reduce((sum, value, i) => sum + (value - t) * (zeros[i] - z), 0) / temperatures.reduce((sum, value) => sum + (value - t) ** 2, 0);
    expect(left.value('value_zero_slope')).toBeCloseTo(slope, 14);
    expect(left.value('value_zero_at_reference')).toBeCloseTo(z + slope * (23 - t), 12);
    const begun = await computed(typed(filled, new Map([...without, [needed, 3], [cellsOf(filled, 'typed_zero')[1], 0.0123]])));
    expect(begun.value('value_zero_slope')).toBe('');
  });
});
