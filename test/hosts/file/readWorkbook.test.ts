/** What other programs write is read as well: filled-down formulas, text in several looks, cells with their text inside. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { readWorkbook } from '../../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../../src/hosts/file/writeWorkbook';
import { sample } from './samplePlan';

async function readWith(part: string, edit: (xml: string) => string) {
  const parts = unzipSync(await writeWorkbook([sample]));
  parts[part] = strToU8(edit(strFromU8(parts[part])));
  return readWorkbook(zipSync(parts))[0].cells;
}

test('a formula filled down is spelt out in every cell', async () => {
  const rows = '<row r="1"><c r="A1"><f t="shared" ref="A1:A3" si="0">B1*$C$1</f><v>1</v></c></row>' +
    '<row r="2"><c r="A2"><f t="shared" si="0"/><v>2</v></c></row><row r="3"><c r="A3"><f t="shared" si="0"/><v>3</v></c></row>';
  const cells = await readWith('xl/worksheets/sheet1.xml', (xml) => xml.replace(/<sheetData>.*<\/sheetData>/s, `<sheetData>${rows}</sheetData>`));
  expect(cells.map(({ at, formula, value }) => [at, formula, value])).toEqual([['A1', '=B1*$C$1', 1], ['A2', '=B2*$C$1', 2], ['A3', '=B3*$C$1', 3]]);
});

test('text in several looks, codes of letters, and text inside the cell are text', async () => {
  const rows = '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="inlineStr"><is><t>inside</t></is></c></row>';
  const parts = unzipSync(await writeWorkbook([sample]));
  parts['xl/sharedStrings.xml'] = strToU8('<sst><si><r><t xml:space="preserve">mV </t></r><r><t>/V_x0041_&#10;&#x3A9;</t></r></si></sst>');
  parts['xl/worksheets/sheet1.xml'] = strToU8(`<worksheet><sheetData>${rows}</sheetData></worksheet>`);
  expect(readWorkbook(zipSync(parts))[0].cells).toEqual([{ at: 'A1', value: 'mV /VA\nΩ' }, { at: 'B1', value: 'inside' }]);
});

test('a file that is no workbook is refused with what was expected', () => {
  expect(() => readWorkbook(strToU8('force,reading'))).toThrow('found a file that is no zip archive; expected a workbook (.xlsx)');
  expect(() => readWorkbook(zipSync({ 'a.txt': strToU8('a') }))).toThrow('found no part "xl/workbook.xml"; expected a workbook (.xlsx)');
});
