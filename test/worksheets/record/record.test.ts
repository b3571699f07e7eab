import { readySheets } from '../../../src/worksheets/readySheets';
import type { ReadSheet } from '../../../src/worksheets/readSheet';
import { differences } from '../../../src/worksheets/record/differences';
import { recordFits, readingsFingerprint } from '../../../src/worksheets/record/fingerprint';
import { planRecord } from '../../../src/worksheets/record/planRecord';
import { readRecord } from '../../../src/worksheets/record/readRecord';
import { recordLines } from '../../../src/worksheets/record/recordLines';
import { SampleSheet } from '../sampleSheet';
import { asRead, frozen, withCell } from './asRead';

const SIGNED = { by: 'A. Nother (invented)', on: 46_351, reason: 'issue', version: '1.0.0' };
const sheets = readySheets().filter(({ id }) => ['five-point', 'iso-376', 'system', 'receiving-inspection', 'history'].includes(id)).map(({ filled }) => asRead(filled));

function recordOf(held: readonly ReadSheet[]) {
  return readRecord([...held, asRead(planRecord(held, SIGNED))])!;
}

const record = recordOf(sheets);

test('a record is read back from its sheet line by line, and fits its fingerprints', () => {
  expect(record.lines).toEqual(recordLines(sheets));
  expect(record).toMatchObject({ sheet: 'Record', signedBy: SIGNED.by, signedOn: SIGNED.on });
  expect(recordFits(record)).toBe(true);
});

test('odd texts of cells are read back from a record', () => {
  const odd = new SampleSheet().put('A1', '=1+1').put('A2', "'x").put('A3', 'two\nlines\tand \\n').put('A4', '7').put('A5', 7).put('A6', '  ').put('A7', true).put('A8', { error: '#N/A' }).put('A9', 'TRUE').read();
  const read = recordOf([odd]);
  expect(read.lines).toEqual(recordLines([odd]));
  expect(differences(read, [odd])).toEqual([]);
});

test('the record names every sheet that has readings with its own fingerprint', () => {
  const plan = planRecord(sheets, SIGNED);
  const texts = new Set(plan.cells.map(({ value }) => value));
  for (const sheet of sheets) expect(texts).toContain(readingsFingerprint(sheet));
  expect(plan).toMatchObject({ name: 'Record', locked: true, print: { landscape: true } });
});

test('a long record is named in parts and read back whole', () => {
  const many: ReadSheet = { name: 'Long', names: [], cells: Array.from({ length: 20_003 }, (_, i) => ({ at: `A${i + 1}`, value: i })) };
  const plan = planRecord([many], SIGNED);
  expect(plan.names).toContainEqual({ name: 'record_content_2', range: expect.stringMatching(/^D\d+:D\d+$/) });
  expect(recordOf([many]).lines).toHaveLength(20_003);
});

test('an untouched workbook is as recorded, and so is one with a Record and a Review sheet in it', () => {
  expect(differences(record, sheets)).toEqual([]);
  const review = new SampleSheet().single('review_outcome', 'B2', 'x').read();
  expect(differences(record, [...sheets, asRead(planRecord(sheets, SIGNED)), review])).toEqual([]);
});

test('a copy whose cell functions became their values is as recorded', () => {
  expect(differences(record, sheets.map(frozen))).toEqual([]);
});

const [run] = sheets;
const reading = record.lines.find(({ part, content }) => part === 'reading' && content.length > 4)!;
const limit = record.lines.find(({ part }) => part === 'limit')!;
const own = record.lines.find(({ part, content, value }) => part === 'formula' && /^=IF\(.*PROVE/.test(content) && /^-?0\.\d+$/.test(value))!;
const spilling = record.lines.find(({ content, value }) => content.includes('PROVE.NET') && value.startsWith('{'))!;
const plain = record.lines.find(({ part, content }) => part === 'formula' && content.includes('AVERAGE') && !content.includes('PROVE'))!;

function changed(change: (sheet: ReadSheet) => ReadSheet) {
  return differences(record, sheets.map((sheet) => (sheet === run ? change(sheet) : sheet)));
}

test.each([['a unit', 1], ['the last digit', 1e-5], ['less than a cell shows', 1e-12]])('a reading changed by %s is told with what it was', (_, by) => {
  const is = Number(reading.content) + by;
  expect(changed((sheet) => withCell(sheet, reading.at, is))).toEqual([{ sheet: run.name, at: reading.at, part: 'reading', was: reading.content, is: String(is) }]);
});

test('a reading that is gone, or became text, is told', () => {
  expect(changed((sheet) => withCell(sheet, reading.at, null))).toEqual([expect.objectContaining({ at: reading.at, part: 'reading', is: '' })]);
  expect(changed((sheet) => withCell(sheet, reading.at, reading.content))).toEqual([expect.objectContaining({ at: reading.at, is: `'${reading.content}` })]);
});

test('a limit that was widened is told as a limit', () => {
  expect(changed((sheet) => withCell(sheet, limit.at, 2 * Number(limit.content)))).toEqual([expect.objectContaining({ at: limit.at, part: 'limit', was: limit.content })]);
});

test('a formula replaced by its own value is told, unless all cell functions are', () => {
  expect(changed((sheet) => withCell(sheet, own.at, Number(own.value)))).toEqual([{ sheet: run.name, at: own.at, part: 'formula', was: own.content, is: own.value }]);
});

test('a plain formula replaced by its value is told in an issue copy too', () => {
  const found = differences(record, sheets.map(frozen).map((sheet) => (sheet.name === run.name ? withCell(sheet, plain.at, Number(plain.value)) : sheet)));
  expect(found).toEqual([expect.objectContaining({ at: plain.at, part: 'formula', was: plain.content })]);
});

test('a formula that was changed is told, one that only reads otherwise is not', () => {
  const lower = own.content.toLowerCase().replace('=if(', '=If( ');
  expect(changed((sheet) => withCell(sheet, own.at, Number(own.value), lower))).toEqual([]);
  expect(changed((sheet) => withCell(sheet, own.at, Number(own.value), `${own.content}*1`))).toEqual([expect.objectContaining({ at: own.at, was: own.content, is: `${own.content}*1` })]);
});

test('a result that differs by more than 1e-9 is told, a smaller difference is not', () => {
  const value = Number(own.value);
  expect(changed((sheet) => withCell(sheet, own.at, value * (1 + 1e-10), own.content))).toEqual([]);
  expect(changed((sheet) => withCell(sheet, own.at, value * (1 + 1e-8), own.content))).toEqual([expect.objectContaining({ at: own.at, part: 'formula', was: own.value })]);
});

test('a value edited in an issue copy is told, also where a formula spilled', () => {
  const column = spilling.at.replace(/\d+/, '');
  const below = `${column}${Number(spilling.at.replace(/\D+/, '')) + 3}`;
  for (const at of [own.at, below]) {
    const found = differences(record, sheets.map(frozen).map((sheet) => (sheet.name === run.name ? withCell(sheet, at, 0.125) : sheet)));
    expect(found).toEqual([expect.objectContaining({ sheet: run.name, at, part: 'formula', is: '0.125' })]);
  }
});

test('a cell that is new is told', () => {
  expect(changed((sheet) => withCell(sheet, 'Z99', 'added'))).toEqual([{ sheet: run.name, at: 'Z99', part: 'entry', was: '', is: 'added' }]);
});

test('a sheet that is gone and one that is new are told once each', () => {
  const added: ReadSheet = { name: 'Notes', names: [], cells: [{ at: 'A1', value: 'x' }, { at: 'A2', value: 'y' }] };
  expect(differences(record, [...sheets.slice(1), added])).toEqual([
    { sheet: run.name, at: 'A1', part: 'sheet', was: run.name, is: '' },
    { sheet: 'Notes', at: 'A1', part: 'sheet', was: '', is: 'Notes' },
  ]);
});

test('a workbook without a record has none, and a ledger with a broken row does not fit', () => {
  expect(readRecord(sheets)).toBeUndefined();
  const plan = asRead(planRecord([run], SIGNED));
  const row = plan.cells.find(({ value }) => value === reading.content)!.at;
  expect(recordFits(readRecord([withCell(plan, row, '2.5')])!)).toBe(false);
  expect(recordFits(readRecord([withCell(plan, row.replace('D', 'C'), 'nothing')])!)).toBe(false);
});

test('a sheet that holds nothing is no difference, whether it was there or not', () => {
  const empty: ReadSheet = { name: 'Sheet1', names: [], cells: [] };
  expect(differences(record, [...sheets, empty])).toEqual([]);
  expect(differences(recordOf([...sheets, empty]), sheets)).toEqual([]);
});
