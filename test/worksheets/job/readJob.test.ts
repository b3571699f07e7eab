import fc from 'fast-check';
import { inventedJobSheet } from '../../../src/worksheets/data/inventedJob';
import { jobOf, readJob, standardOf } from '../../../src/worksheets/job/readJob';
import { MOST_ITEMS } from '../../../src/worksheets/job/jobTerms';
import { asRead, cellOf, firstItem, job } from './jobSheets';

const plan = inventedJobSheet();

test('what was typed is read back, with the cells it stands in', () => {
  const { sheet, fields, items, standards } = job();
  expect(sheet).toBe('Job');
  expect(fields.number).toEqual({ at: 'B5', value: 'DEMO-2026-041' });
  expect([fields.tolerance.value, fields.class.value, fields.decision_rule.value, fields.least_interval.value, fields.greatest_interval.value]).toEqual([0.001, 'A', 'simple', 6, 24]);
  expect([fields.procedure.value, fields.temperature_least.value, fields.temperature_greatest.value]).toEqual(['Ten-point run, force', 18, 28]);
  expect(items.map(({ index, name, capacity, unit, received }) => [index, name, capacity.value, unit.value, received.value])).toEqual([
    [0, { at: cellOf(plan, 'item_name'), value: 'Cell A' }, 20, 'kN', 46_349], [1, { at: cellOf(plan, 'item_name', 1), value: 'Cell B' }, 20, 'kN', 46_349],
  ]);
  expect(standards.map(({ id, verified_from, verified_to, uncertainty, due }) => [id.value, verified_from.value, verified_to.value, uncertainty.value, due.value]))
    .toEqual([['DEMO-STD-3', 0.5, 25, 0.0002, 46_400]]);
});

test('a sheet without a job number is no job, and the first job of a workbook is found', () => {
  const other = { name: 'Other', cells: [], names: [] };
  expect(readJob(other)).toBeUndefined();
  expect(jobOf([other])).toBeUndefined();
  expect(jobOf([other, asRead(plan)])?.fields.number.value).toBe('DEMO-2026-041');
});

test('an item keeps its column when the one before it has lost its name', () => {
  const { items } = job([{ at: cellOf(plan, 'item_name'), value: null }]);
  expect(items.map(({ index, name, way }) => [index, name.value, way.as_found.at])).toEqual([[1, 'Cell B', cellOf(plan, 'way_as_found', 1)]]);
});

test('an order that is a number is taken as words, a class that became a number as the class, and a date as text as the date', () => {
  const { fields, standards } = job([
    { at: cellOf(plan, 'job_order'), value: 4711 }, { at: cellOf(plan, 'job_class'), value: 0 }, { at: cellOf(plan, 'standards_due'), value: '2027-01-14' },
  ]);
  expect([fields.order.value, fields.class.value, standards[0].due.value]).toEqual(['4711', '00', 46_401]);
});

test('what is of another kind has no value, and its cell is told all the same', () => {
  const { fields, items } = job([{ at: cellOf(plan, 'job_tolerance'), value: '0,1 %' }, { at: cellOf(plan, 'item_received'), value: 'last week' }, { at: cellOf(plan, 'job_place'), value: '  ' }]);
  expect(fields.tolerance).toEqual({ at: cellOf(plan, 'job_tolerance'), value: undefined });
  expect(items[0].received).toEqual({ at: cellOf(plan, 'item_received'), value: undefined });
  expect(fields.place.value).toBeUndefined();
});

test('the standard of an item is found by its id, whatever the case of its letters, or not at all', () => {
  expect(standardOf(job(), firstItem())?.description.value).toBe('Dead-weight frame');
  const lower = job([{ at: cellOf(plan, 'item_standard'), value: 'demo-std-3' }]);
  expect(standardOf(lower, firstItem(lower))?.id.value).toBe('DEMO-STD-3');
  const unknown = job([{ at: cellOf(plan, 'item_standard'), value: 'DEMO-STD-9' }]);
  expect(standardOf(unknown, firstItem(unknown))).toBeUndefined();
});

test('whatever names are lost and whatever stands in the cells, reading gives a job or none', () => {
  const value = fc.oneof(fc.string(), fc.double(), fc.boolean(), fc.constant(null), fc.constant({ error: '#REF!' }));
  const read = asRead(plan);
  fc.assert(fc.property(fc.array(fc.nat(read.names.length - 1)), fc.array(value, { minLength: 1 }), (lost, values) => {
    const sheet = { ...read, names: read.names.filter((_, i) => !lost.includes(i)), cells: read.cells.map((cell, i) => ({ ...cell, value: values[i % values.length] })) };
    const found = readJob(sheet);
    expect(found !== undefined).toBe(sheet.names.some(({ name }) => name === 'job_number'));
    expect((found?.items.length ?? 0) <= MOST_ITEMS).toBe(true);
  }));
});
