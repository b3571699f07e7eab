import { cellBlock } from '../../../src/hosts/excel/cellBlock';
import type { SheetPlan } from '../../../src/worksheets/plan';

const plan: SheetPlan = {
  name: 'Run',
  columns: [10, 10],
  cells: [
    { at: 'A1', role: 'result', formula: '=PROVE.TABLE(D1:D3)', spill: { rows: 3, columns: 2 }, format: '0.0' },
    { at: 'A2', role: 'reference', format: '0.000' },
    { at: 'A5', role: 'input', value: 4 },
    { at: 'C5', role: 'caution', value: '=not a formula' },
  ],
  merges: ['C5:D6'],
};

test('a formula that spills goes in by itself, and the block leaves its cells alone', () => {
  const { entries, spills } = cellBlock(plan);
  expect(spills).toEqual([{ at: 'A1', formula: '=PROVE.TABLE(D1:D3)' }]);
  expect(entries).toEqual([
    [null, null, null, null], [null, null, null, null], [null, null, null, null], [null, null, null, null],
    [4, null, "'=not a formula", null], [null, null, null, null],
  ]);
});

test('a planned cell keeps its own look and format where a formula spills; the others take the source’s', () => {
  const { numberFormats, properties } = cellBlock(plan);
  expect(numberFormats.slice(0, 3).map((row) => row.slice(0, 2))).toEqual([['0.0', '0.0'], ['0.000', '0.0'], ['0.0', '0.0']]);
  expect(properties[1][0].format?.fill).toBeUndefined();
  expect(properties[1][1].format?.fill).toEqual({ color: '#eaf4f2' });
});

test('cells that the plan says nothing of are left alone', () => {
  const { numberFormats, properties } = cellBlock(plan);
  expect(numberFormats[3]).toEqual([null, null, null, null]);
  expect(properties[3]).toEqual([{}, {}, {}, {}]);
});

test('all of a merged block takes the look of its first cell', () => {
  const { properties } = cellBlock(plan);
  expect(properties[5][3]).toEqual(properties[4][2]);
  expect(properties[5][3].format?.wrapText).toBe(true);
});

test('a plan without cells is a block of one cell that is left alone', () => {
  expect(cellBlock({ name: 'Run', columns: [], cells: [] })).toEqual({ entries: [[null]], spills: [], numberFormats: [[null]], properties: [[{}]] });
});
