/** What a file cannot hold is refused, naming the cell; then there is no file. */
import type { CellValue } from '../../../src/hosts/sheetHost';
import { writeWorkbook } from '../../../src/hosts/file/writeWorkbook';
import type { PlanCell, SheetPlan } from '../../../src/worksheets/plan';

const write = (cells: PlanCell[], more: Partial<SheetPlan> = {}, value: CellValue = 1) =>
  writeWorkbook([{ plan: { name: 'Run 1', columns: [10], cells, ...more }, values: () => value }]);
const formula = (text: string): PlanCell => ({ at: 'B2', role: 'result', formula: text });

test.each(['#NAME?', '#SPILL!', '#CALC!', '#CYCLE!', '#ERROR!'])('a formula that gives %s', async (error) => {
  await expect(write([formula('=A1')], {}, { error })).rejects.toThrow(`'Run 1'!B2: found ${error}; expected a value, or one of #VALUE!`);
});

test('a value that is no number a cell can hold', async () => {
  await expect(write([formula('=A1')], {}, NaN)).rejects.toThrow("'Run 1'!B2: found NaN; expected a number that a cell can hold");
});

test.each([['=LET(x,1,x+1)', 'LET'], ['=SUM(A1#)', 'A1#'], ['=BYROW(A1:B2,LAMBDA(r,SUM(r)))', 'LAMBDA']])('%s', async (text, found) => {
  await expect(write([formula(text)])).rejects.toThrow(`'Run 1'!B2: found ${found}; a workbook file takes formulas without LET`);
});

test('an array within merged cells', async () => {
  await expect(write([formula('=PROVE.NET(A1:A3)')], { merges: ['B2:D2'] })).rejects.toThrow("found =PROVE.NET(A1:A3) within B2:D2; Excel takes no array");
});

test('a plain formula within merged cells is no array, and is written', async () => {
  await expect(write([formula('=IF(COUNT(A1:A3)<3,"missing","")')], { merges: ['B2:D2'] })).resolves.toBeInstanceOf(Uint8Array);
});

test('words of a list with a comma, which Excel would take for two', async () => {
  const validations: SheetPlan['validations'] = [{ range: 'A1', rule: { kind: 'list', words: ['yes, so', 'no'] }, message: 'Choose.' }];
  await expect(write([], { validations })).rejects.toThrow('Run 1!A1: found "yes, so" in a list; words without commas and quotes were expected');
});

test('a list and a message longer than Excel takes', async () => {
  const words = Array.from({ length: 60 }, (_, i) => `word ${i}`);
  await expect(write([], { validations: [{ range: 'A1', rule: { kind: 'list', words }, message: 'Choose.' }] })).rejects.toThrow('Excel takes 255 at most');
  await expect(write([], { validations: [{ range: 'A1', rule: { kind: 'date' }, message: 'x'.repeat(226) }] })).rejects.toThrow('Excel takes 225 at most');
});

const named = (names: SheetPlan['names'], name = 'Run 1'): Promise<Uint8Array> => write([], { name, names });

test('a sheet whose name Excel refuses', async () => {
  await expect(named([], 'Run [1]')).rejects.toThrow('found “Run [1]”; expected a name without [');
});

test('two sheets whose names differ in case only', async () => {
  const sheet = (name: string) => ({ plan: { name, columns: [10], cells: [] }, values: () => null });
  await expect(writeWorkbook([sheet('Run'), sheet('RUN')])).rejects.toThrow('found two sheets named “RUN”; expected a name for each');
});

test.each(['A1', 'run1', 'R1C1', 'r', 'C2', 'a b', '1st', 'A0.1', ''])('a range named "%s", which Excel takes for a cell or for no name', async (name) => {
  await expect(named([{ name, range: 'A1' }])).rejects.toThrow(`Run 1: found the name “${name}”; expected letters, digits and underscores, and no cell address`);
});

test('a name used twice, and one that stands for no range', async () => {
  await expect(named([{ name: 'forces', range: 'A1:A3' }, { name: 'Forces', range: 'B1' }])).rejects.toThrow('Run 1: found the name “Forces” twice');
  await expect(named([{ name: 'forces', range: 'A1:A' }])).rejects.toThrow('found "A"; expected a cell address');
  await expect(named([{ name: 'plain_A0', range: 'A1' }])).resolves.toBeInstanceOf(Uint8Array);
});

test('text longer than a cell takes', async () => {
  await expect(write([{ at: 'A1', role: 'text', value: 'x'.repeat(32768) }])).rejects.toThrow('Run 1: a workbook file cannot hold this: XlsxError(MaxStringLengthExceeded)');
});
