import { planComparison } from '../../../src/worksheets/comparison/comparison';
import { lastEntries } from '../../../src/worksheets/comparison/lastEntries';
import { lastOf, type LastResults, lastResults } from '../../../src/worksheets/comparison/lastResults';
import { comparisonOf } from '../../../src/worksheets/comparison/comparisonOf';
import type { ReadCell, ReadSheet } from '../../../src/worksheets/readSheet';
import { firstItem, job } from '../job/jobSheets';

/** A sheet of a run as it is read back: forces 0, 10, 20, 0 in A1:A4, two runs in B:C, their mean net in D. */
function run(name: string, { block = 'compression', date = 46_000, more = {} }: { block?: string; date?: number; more?: Readonly<Record<string, string | number>> } = {}): ReadSheet {
  const columns = { A: [0, -10, -20, 0], B: [0.01, -0.99, -1.99, 0.01], C: [0.012, -0.988, -1.99, 0.012], D: [0, -1, -2.001, 0] };
  const cells = Object.entries(columns).flatMap(([letter, values]) => values.map((value, i): ReadCell => ({ at: `${letter}${i + 1}`, value })));
  const told: Record<string, string | number> = { date, capacity: 25, unit: 'kN', output_unit: 'mV/V', ...more };
  return {
    name, cells: [...cells, ...Object.values(told).map((value, i): ReadCell => ({ at: `F${i + 1}`, value }))],
    names: [
      { name: `forces_${block}`, range: 'A1:A4' }, { name: `readings_${block}`, range: 'B1:C4' }, { name: `mean_${block}`, range: 'D1:D4' },
      ...Object.keys(told).map((key, i) => ({ name: key, range: `F${i + 1}` })),
    ],
  };
}

describe('results of an earlier workbook', () => {
  test('are the output brought to capacity, the mean zero before the runs, coefficients, date and units', () => {
    const [last] = lastResults([run('Old run', { more: { value_a0: 0.001, value_a1: -0.1, value_a2: 2e-6, identification: 'No. 17' } })]);
    expect(last).toEqual({
      where: 'Old run', block: 'compression', identification: 'No. 17', date: 46_000, capacity: 25, unit: 'kN', outputUnit: 'mV/V',
      coefficients: [0.001, -0.1, 2e-6], output: -2.001 * 25 / 20, zero: expect.closeTo(0.011, 12),
    });
  });

  test('stand with the latest first, and as left before as found', () => {
    const found = lastResults([run('A found', { date: 46_000 }), run('A left', { date: 46_000 }), run('Older', { date: 45_000 })]);
    expect(found.map(({ where }) => where)).toEqual(['A left', 'A found', 'Older']);
  });

  test('of a sheet without readings, or of none at forces, are none', () => {
    const blank = run('Blank');
    expect(lastResults([{ ...blank, cells: blank.cells.filter(({ at }) => !/^[BCD]/.test(at)) }, { name: 'Notes', cells: [{ at: 'A1', value: 'words' }], names: [] }])).toEqual([]);
  });

  test('keep the coefficients of each block apart', () => {
    const [last] = lastResults([run('Old', { more: { value_a0_compression: 0, value_a1_compression: -0.1, value_a0_tension: 5, value_a1_tension: 6 } })]);
    expect(last.coefficients).toEqual([0, -0.1]);
  });
});

describe('the results of an item', () => {
  const result = (where: string, identification?: string, block = 'tension'): LastResults => ({ where, block, ...(identification === undefined ? {} : { identification }), output: 2 });
  const item = { name: 'Cell A', identification: 'Invented, No. 17' };

  test('are those under its identification, whatever its case', () => {
    expect(lastOf([result('Cell A left', 'other'), result('Cell B left', 'INVENTED, no. 17 ')], 'tension', item)?.where).toBe('Cell B left');
  });

  test('are those under a part of it where none says the whole', () => {
    expect(lastOf([result('Cell A left', 'No. 18'), result('Run', 'No. 17')], 'tension', item)?.where).toBe('Run');
  });

  test('are those of sheets that begin with its name where no identification is told', () => {
    expect(lastOf([result('Run'), result('Cell A left')], 'tension', item)?.where).toBe('Cell A left');
    expect(lastOf([result('Run')], 'tension', item)?.where).toBe('Run');
  });

  test('are never those of another identification or another block', () => {
    expect(lastOf([result('Cell A left', 'No. 18')], 'tension', item)).toBeUndefined();
    expect(lastOf([result('Cell A left')], 'compression', item)).toBeUndefined();
  });
});

describe('entries of last time', () => {
  const parts = { job: job(), item: firstItem(), found: run('Cell A as found'), name: 'Cell A comparison' };
  const plan = planComparison(parts).plan!;
  const last: LastResults = { where: 'Old run', block: 'compression', date: 45_000, output: -2, coefficients: [0, -0.1], unit: 'kN', outputUnit: 'mV/V' };
  const at = (name: string) => plan.names!.find((entry) => entry.name === name)!.range;

  test('go into the cells of the comparison, and empty those that last time says nothing of', () => {
    const entries = new Map(lastEntries(plan, [last], firstItem()).map((entry) => [entry.at, entry.value]));
    expect([entries.get(at('last_date')), entries.get(at('last_output')), entries.get(at('last_zero')), entries.get(at('last_where'))]).toEqual([45_000, -2, null, 'Old run']);
    const row = /\d+$/.exec(at('last_date'))![0];
    expect(['F', 'G', 'H', 'K'].map((letter) => entries.get(`${letter}${row}`))).toEqual([0, -0.1, null, null]);
    const inputs = new Set(plan.cells.filter(({ role }) => role === 'input').map((cell) => cell.at));
    expect([...entries.keys()].filter((cell) => !inputs.has(cell))).toEqual([]);
  });

  test('are what planning with last time writes', () => {
    const planned = planComparison({ ...parts, last: [last] }).plan!;
    const entries = new Map(lastEntries(plan, [last], firstItem()).map((entry) => [entry.at, entry.value]));
    expect(planned.cells.map((cell) => (entries.has(cell.at) ? { ...cell, value: entries.get(cell.at) ?? undefined } : cell)).map(({ at: cell, value }) => [cell, value]))
      .toEqual(planned.cells.map(({ at: cell, value }) => [cell, value]));
  });

  test('are refused in words where no results fit, units differ, or the sheet compares nothing', () => {
    expect(() => lastEntries(plan, [{ ...last, block: 'tension' }], firstItem())).toThrow('Found no results of “Cell A” in the earlier workbook');
    expect(() => lastEntries(plan, [{ ...last, unit: 'lbf' }], firstItem())).toThrow('Found last time in lbf and mV/V, on “Old run”; expected kN and mV/V');
    expect(() => lastEntries(run('Run'), [last], firstItem())).toThrow('“Run” holds no comparison');
  });
});

test('the comparison of an item is found by the name that the job gives it', () => {
  const sheet = (name: string, item: string): ReadSheet => ({ name, cells: [{ at: 'C6', value: item }], names: [{ name: 'comparison_item', range: 'C6' }] });
  const sheets = [run('Run'), sheet('One', 'Cell A'), sheet('Two', 'Cell B')];
  expect(comparisonOf(sheets, 'Cell B')?.name).toBe('Two');
  expect(comparisonOf(sheets, 'Cell C')).toBeUndefined();
});
