import { readySheets } from '../../../src/worksheets/readySheets';
import { recordLines } from '../../../src/worksheets/record/recordLines';
import { spillsOf } from '../../../src/worksheets/record/spills';
import { SampleSheet } from '../sampleSheet';
import { asRead } from './asRead';

const ready = readySheets().map(({ id, filled }) => [id, filled] as const);

test.each(ready)('on the sheet of %s the names tell every formula that spills, and over what', (_, plan) => {
  const planned = plan.cells.flatMap(({ at, spill }) => (spill && spill.rows * spill.columns > 1 ? [[at, spill.rows * spill.columns]] : []));
  const told = [...spillsOf(asRead(plan))].map(([at, { left, right, top, bottom }]) => [at, (right - left + 1) * (bottom - top + 1)]);
  expect(told.sort()).toEqual(planned.sort());
});

test.each(ready)('on the sheet of %s every cell that holds something has a line, except where a formula spills into', (_, plan) => {
  const held = plan.cells.filter(({ value, formula }) => formula !== undefined || (value !== undefined && value !== ''));
  expect(recordLines([asRead(plan)]).map(({ at }) => at).sort()).toEqual(held.map(({ at }) => at).sort());
});

test.each(ready)('on the sheet of %s there are readings, and limits are numbers or words that a person typed', (_, plan) => {
  const lines = recordLines([asRead(plan)]);
  const roles = new Map(plan.cells.map(({ at, role }) => [at, role]));
  expect(lines.filter(({ part }) => part === 'reading').length).toBeGreaterThan(8);
  const limits = lines.filter(({ part }) => part === 'limit');
  expect(limits.length).toBeGreaterThan(1);
  expect(limits.filter(({ at }) => roles.get(at) !== 'input')).toEqual([]);
});

function sample(): SampleSheet {
  return new SampleSheet().range('forces_tension', 1, 4, [[0], [10]]).range('readings_tension', 2, 4, [[0.01], [2.01]])
    .range('net_tension', 3, 4, [[0], [2]], '=PROVE.NET(A4:A5,B4:B5)')
    .single('limit_zero', 'E9', 0.0005).single('value_zero', 'D9', 1e-5, { formula: '=C5*5E-6' }).single('verdict_zero', 'F9', 'within', { formula: '=IF(D9<=E9+$G$9,"within","outside")' })
    .put('G9', 0.0001).put('A1', 'A run').put('B1', ' ').put('C1', '');
}

test('a line says what a cell holds, which part it plays, and what a formula gave', () => {
  expect(recordLines([sample().read()]).map(({ at, part, content, value }) => [at, part, content, value])).toEqual([
    ['A1', 'entry', 'A run', ''], ['B1', 'entry', "' ", ''],
    ['A4', 'reading', '0', ''], ['B4', 'reading', '0.01', ''], ['C4', 'formula', '=PROVE.NET(A4:A5,B4:B5)', '{0;2}'],
    ['A5', 'reading', '10', ''], ['B5', 'reading', '2.01', ''],
    ['D9', 'formula', '=C5*5E-6', '0.00001'], ['E9', 'limit', '0.0005', ''], ['F9', 'formula', '=IF(D9<=E9+$G$9,"within","outside")', 'within'],
    ['G9', 'limit', '0.0001', ''],
  ]);
});

test('what spills is told by the host too, without a name', () => {
  const { cells } = new SampleSheet().range('x', 1, 1, [[1, 2], [3, 4]], '=A9:B10*1').read();
  const read = { name: 'Sample', names: [], cells: cells.map((cell) => (cell.at === 'A1' ? { ...cell, spill: { rows: 2, columns: 2 } } : cell)) };
  expect(recordLines([read])).toEqual([{ sheet: 'Sample', at: 'A1', part: 'formula', content: '=A9:B10*1', value: '{1,2;3,4}' }]);
});

test('sheets that speak of the record are no part of it', () => {
  const record = new SampleSheet().single('record_everything', 'B2', 'x').read();
  const review = new SampleSheet().single('review_outcome', 'B2', 'x').read();
  expect(recordLines([record, review])).toEqual([]);
});

test('the order is row by row, in whatever order a sheet was read', () => {
  const read = sample().read();
  expect(recordLines([{ ...read, cells: [...read.cells].reverse() }])).toEqual(recordLines([read]));
});

test('that a job is reviewed is no part of what was signed before', () => {
  const job = new SampleSheet().range('way_decided', 3, 1, [['conforms', 'conforms']]).range('way_reviewed', 3, 2, [['Review', null]]).read();
  expect(recordLines([job]).map(({ at }) => at)).toEqual(['C1', 'D1']);
});
