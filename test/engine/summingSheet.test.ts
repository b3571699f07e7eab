/** Cells typed into the sheet of a summing box: with and without output resistances. */
import { addressOf, rangeOf } from '../../src/hosts/address';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import type { SheetPlan } from '../../src/worksheets/plan';
import { readySheets } from '../../src/worksheets/readySheets';
import { CellError, Engine } from './bundle';

const { empty } = readySheets().find(({ id }) => id === 'summing-box')!;

type Typed = Readonly<Record<string, readonly number[]>>;

async function computed(values: Typed, plan: SheetPlan = empty) {
  const cell = (name: string, below = 0) => {
    const { startRow, startColumn } = rangeOf(plan.names!.find((entry) => entry.name === name)!.range);
    return addressOf({ row: startRow + below, column: startColumn });
  };
  const put = new Map(Object.entries(values).flatMap(([name, column]) => column.map((value, i) => [cell(name, i), value] as const)));
  const typed = { ...plan, cells: plan.cells.map((held) => (put.has(held.at) ? { ...held, value: put.get(held.at) } : held)) };
  const engine = new Engine(engineSheets([typed]));
  await engine.calculate();
  const all = new Map(plan.cells.map(({ at }) => [at, engine.value(plan.name, at)]));
  engine.dispose();
  return { value: (name: string) => all.get(cell(name)), errors: [...all].filter(([, value]) => value instanceof CellError) };
}

const CELLS: Typed = { typed_zero: [0, 0.01, 0.02, 0.03], typed_loaded: [1, 1.01, 1.02, 1.43], box_read_zero: [0.015], box_read_loaded: [1.115] };

describe('a summing box', () => {
  test('without output resistances gives the mean of its cells', async () => {
    const { value, errors } = await computed(CELLS);
    expect(errors).toEqual([]);
    for (const kind of ['value', 'plain']) {
      expect(value(`${kind}_box_zero`)).toBeCloseTo(0.015, 12);
      expect(value(`${kind}_box_change`)).toBeCloseTo(1.1, 12);
    }
    expect(value('verdict_overall')).toBe('within specification in all 2 judged');
  });

  test('weighs each cell by one over its output resistance', async () => {
    const { value, errors } = await computed({ ...CELLS, output_resistances: [350, 350, 350, 700] });
    expect(errors).toEqual([]);
    // Σ(X/R)/Σ(1/R) with weights 2, 2, 2 and 1.
    expect(value('value_box_change')).toBeCloseTo((2 * 3 + 1.4) / 7, 12);
    expect(value('plain_box_change')).toBeCloseTo((2 * 3 + 1.4) / 7, 12);
    expect(value('verdict_change_difference')).toBe('outside');
  });

  test('waits while resistances are typed for some cells only', async () => {
    const { value, errors } = await computed({ ...CELLS, output_resistances: [350, 350] });
    expect(errors).toEqual([]);
    expect([value('value_box_zero'), value('plain_box_zero'), value('verdict_overall')]).toEqual(['', '', 'open: readings are missing']);
  });
});
