/** The issue copy of a workbook: cell functions become values, the rest stays alive, everything is locked. */
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { issueCopy } from '../../../src/hosts/file/issueCopy';
import { readWorkbook } from '../../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../../src/hosts/file/writeWorkbook';
import type { CellValue } from '../../../src/hosts/sheetHost';
import type { PlanCell, SheetPlan } from '../../../src/worksheets/plan';
import { cellXml, partsFrom } from './parts';
import { plan as samplePlan, VALUES } from '../samplePlan';

const SHEET = 'xl/worksheets/sheet1.xml';

const VALUES_OF: Readonly<Record<string, CellValue>> = {
  B1: 1.25, B2: 'within & <1 %', B3: '', B4: true, B5: { error: '#N/A' }, B6: 7, C6: 8, B7: 'x', C7: { error: '#VALUE!' }, D1: 2.5, D2: 'PROVE.FIT(1) is text', D3: 3,
};
const CELLS: PlanCell[] = [
  { at: 'A1', role: 'input', value: 1 }, { at: 'A2', role: 'input', value: '=1+1' },
  { at: 'B1', role: 'result', formula: '=PROVE.NET(A1,0)', format: '0.00' }, { at: 'B2', role: 'verdict', formula: '=IF(PROVE.NET(A1,0)<1,"a","b")' },
  { at: 'B3', role: 'result', formula: '=PROVE.NET(A2,0)' }, { at: 'B4', role: 'result', formula: '=PROVE.NET(A3,0)>1' }, { at: 'B5', role: 'result', formula: '=PROVE.NET(A4,0)' },
  { at: 'B6', role: 'result', formula: '=PROVE.FIT(A1:A2)', spill: { rows: 2, columns: 2 } },
  { at: 'D1', role: 'formula', formula: '=B1*2' }, { at: 'D2', role: 'formula', formula: '="PROVE.FIT(1) is text"' }, { at: 'D3', role: 'formula', formula: '=SUM(forces*2)' },
];
const PLAN: SheetPlan = {
  name: "Bench 1's run", columns: [10, 10, 10], cells: CELLS, names: [{ name: 'forces', range: 'A1:A2' }],
  validations: [{ range: 'A1', rule: { kind: 'number', least: 0 }, message: 'A number.' }], highlights: [{ range: 'B1', formula: '=B1>1', look: 'pass' }],
};

const written = (plan: SheetPlan = PLAN, values: Readonly<Record<string, CellValue>> = VALUES_OF) => writeWorkbook([{ plan, values: (at) => values[at] ?? null }]);

function changed(file: Uint8Array, edits: Readonly<Record<string, (xml: string) => string>>): Uint8Array {
  const parts = unzipSync(file);
  for (const [part, change] of Object.entries(edits)) parts[part] = strToU8(change(parts[part] ? strFromU8(parts[part]) : ''));
  return zipSync(parts);
}

test('cell functions become the values they gave, spilled ones included; plain formulas stay, with their values', async () => {
  const file = await written();
  const [before] = readWorkbook(file);
  const [after] = readWorkbook(issueCopy(file));
  expect(after.cells.map(({ at, value }) => [at, value])).toEqual(before.cells.map(({ at, value }) => [at, value]));
  expect(after.cells.filter(({ formula }) => formula !== undefined).map(({ at, formula }) => [at, formula])).toEqual([
    ['D1', '=B1*2'], ['D2', '="PROVE.FIT(1) is text"'], ['D3', '=SUM(forces*2)'],
  ]);
  expect(after.names).toEqual(before.names);
  expect(after.cells.find(({ at }) => at === 'B1')?.format).toBe('0.00');
});

test('the file holds no trace of a cell function, and array marks only on arrays that stay', async () => {
  const parts = partsFrom(issueCopy(await written()));
  for (const [part, xml] of Object.entries(parts)) expect([part, /_xldudf_/.test(xml)]).toEqual([part, false]);
  expect(cellXml(parts[SHEET], 'B1')).toMatch(/^<c r="B1" s="\d+"><v>1.25<\/v><\/c>$/);
  expect(cellXml(parts[SHEET], 'B2')).toContain('t="inlineStr"><is><t xml:space="preserve">within &amp; &lt;1 %</t></is>');
  expect(cellXml(parts[SHEET], 'B5')).toMatch(/t="e"><v>#N\/A<\/v>/);
  expect(cellXml(parts[SHEET], 'D3')).toMatch(/cm="1"><f t="array" ref="D3"/);
  expect(parts['xl/metadata.xml']).toBeDefined();
});

test('without an array that stays, what describes arrays is left out with all that points to it', async () => {
  const parts = partsFrom(issueCopy(await written({ ...PLAN, cells: CELLS.filter(({ at }) => at !== 'D2' && at !== 'D3') })));
  expect(parts['xl/metadata.xml']).toBeUndefined();
  expect(parts['xl/_rels/workbook.xml.rels']).not.toContain('metadata');
  expect(parts['[Content_Types].xml']).not.toContain('metadata');
});

test('every cell is locked and every sheet protected, without a password; looks, rules and print stay', async () => {
  const file = await writeWorkbook([{ plan: { ...samplePlan, locked: false }, values: (at) => VALUES[at] ?? null }]);
  const [before, after] = [partsFrom(file), partsFrom(issueCopy(file))];
  expect(before['xl/styles.xml']).toContain('locked="0"');
  expect(after['xl/styles.xml']).not.toContain('locked="0"');
  expect(after[SHEET]).toContain('</sheetData><sheetProtection sheet="1" objects="1" scenarios="1"/>');
  const kept = (xml: string) => /<(?:mergeCells|conditionalFormatting|dataValidations|pageMargins).*/s.exec(xml)?.[0];
  expect(kept(after[SHEET])).toBe(kept(before[SHEET]));
  expect(after['xl/charts/chart1.xml']).toBe(before['xl/charts/chart1.xml']);
});

test('a sheet that was protected already is protected once, and its password and open ranges are gone', async () => {
  const parts = partsFrom(issueCopy(changed(await written({ ...PLAN, locked: true }), {
    [SHEET]: (xml) => xml.replace(/<sheetProtection [^>]*\/>/, '<sheetProtection sheet="1" password="CC1A"/><protectedRanges><protectedRange name="r" sqref="A1"/></protectedRanges>'),
  })));
  expect(parts[SHEET].match(/<sheetProtection[^>]*>/g)).toEqual(['<sheetProtection sheet="1" objects="1" scenarios="1"/>']);
  expect(parts[SHEET]).not.toContain('protectedRange');
});

test('what Excel adds is left out: order of computing, panes of add-ins, names of cell functions, computing on opening', async () => {
  const type = (part: string, kind: string) => `<Override PartName="/${part}" ContentType="${kind}"/>`;
  const link = (id: string, target: string) => `<Relationship Id="${id}" Type="t" Target="${target}"/>`;
  const file = changed(await written(), {
    'xl/calcChain.xml': () => '<calcChain/>',
    'xl/webextensions/taskpanes.xml': () => '<taskpanes/>',
    'xl/webextensions/_rels/taskpanes.xml.rels': () => `<Relationships>${link('rId1', 'webextension1.xml')}</Relationships>`,
    'xl/webextensions/webextension1.xml': () => '<webextension/>',
    '[Content_Types].xml': (xml) => xml.replace('</Types>', `${type('xl/calcChain.xml', 'c')}${type('xl/webextensions/taskpanes.xml', 't')}</Types>`),
    'xl/_rels/workbook.xml.rels': (xml) => xml.replace('</Relationships>', `${link('rId90', 'calcChain.xml')}</Relationships>`),
    '_rels/.rels': (xml) => xml.replace('</Relationships>', `${link('rId91', 'xl/webextensions/taskpanes.xml')}</Relationships>`),
    'xl/workbook.xml': (xml) => xml.replace('<definedNames>', '<definedNames><definedName name="_xldudf_PROVE_NET" hidden="1">#NAME?</definedName>')
      .replace(/<calcPr[^>]*\/>/, '<calcPr calcId="191029" fullCalcOnLoad="1"/>'),
  });
  const parts = partsFrom(issueCopy(file));
  expect(Object.keys(parts).filter((part) => /calcChain|webextension/.test(part))).toEqual([]);
  for (const part of ['[Content_Types].xml', 'xl/_rels/workbook.xml.rels', '_rels/.rels']) expect(parts[part]).not.toMatch(/calcChain|webextension/);
  expect(parts['xl/workbook.xml']).not.toMatch(/_xldudf_|fullCalcOnLoad/);
  expect(parts['xl/workbook.xml']).toContain("name=\"forces\"");
  expect(readWorkbook(issueCopy(file))[0].cells).toHaveLength(readWorkbook(file)[0].cells.length);
});

test('a formula filled down, which the file spells out once, becomes its values in every cell', async () => {
  const rows = '<row r="1"><c r="A1"><f t="shared" ref="A1:A3" si="0">_xldudf_PROVE_NET(B1,0)</f><v>1</v></c></row>' +
    '<row r="2"><c r="A2"><f t="shared" si="0"/><v>2</v></c><c r="B2"><f t="shared" ref="B2:B3" si="1">C2*2</f><v>4</v></c></row>' +
    '<row r="3"><c r="A3"><f t="shared" si="0"/><v>3</v></c><c r="B3"><f t="shared" si="1"/><v>6</v></c></row>';
  const file = changed(await written(), { [SHEET]: (xml) => xml.replace(/<sheetData>.*<\/sheetData>/s, `<sheetData>${rows}</sheetData>`) });
  expect(readWorkbook(issueCopy(file))[0].cells).toEqual([
    { at: 'A1', value: 1 }, { at: 'A2', value: 2 }, { at: 'B2', value: 4, formula: '=C2*2' }, { at: 'A3', value: 3 }, { at: 'B3', value: 6, formula: '=C3*2' },
  ]);
});

describe('is refused, naming the cell,', () => {
  const withCell = async (cell: string) => changed(await written(), { [SHEET]: (xml) => xml.replace(/<c r="B1".*?<\/c>/s, cell) });

  test('where a formula has no value', async () => {
    const file = await withCell('<c r="B1"><f>_xldudf_PROVE_NET(A1,0)</f></c>');
    expect(() => issueCopy(file)).toThrow("'Bench 1''s run'!B1: found a formula without a value; compute the workbook first");
  });

  test.each(['#NAME?', '#GETTING_DATA', '#SPILL!'])('where a formula gave %s', async (code) => {
    const file = await withCell(`<c r="B1" t="e"><f>_xldudf_PROVE_NET(A1,0)</f><v>${code}</v></c>`);
    expect(() => issueCopy(file)).toThrow(`'Bench 1''s run'!B1: found ${code}; expected a value`);
    expect(readWorkbook(file)[0].cells.find(({ at }) => at === 'B1')?.value).toEqual({ error: code });
  });

  test('where a plain formula was never computed', async () => {
    const file = await withCell('<c r="B1" t="e"><f>NOSUCH(A1)</f><v>#NAME?</v></c>');
    expect(() => issueCopy(file)).toThrow("'Bench 1''s run'!B1: found #NAME?");
  });

  test('where a condition or a name calls a cell function', async () => {
    const condition = changed(await written(), { [SHEET]: (xml) => xml.replace('<formula>B1&gt;1</formula>', '<formula>_xldudf_PROVE_NET(B1,0)&gt;1</formula>') });
    expect(() => issueCopy(condition)).toThrow("Bench 1's run: found _xldudf_PROVE_NET(B1,0)>1 in a condition");
    const name = changed(await written(), { 'xl/workbook.xml': (xml) => xml.replace('<definedNames>', '<definedNames><definedName name="mine">_xldudf_PROVE_NET(1,0)</definedName>') });
    expect(() => issueCopy(name)).toThrow('as the name “mine”');
  });

  test('where the file is no workbook', () => {
    expect(() => issueCopy(strToU8('force,reading'))).toThrow('found a file that is no zip archive; expected a workbook (.xlsx)');
    expect(() => issueCopy(zipSync({ 'a.txt': strToU8('a') }))).toThrow('found no part "xl/workbook.xml"');
  });
});

test('an issue copy of an issue copy is the same', async () => {
  const once = issueCopy(await written());
  expect(partsFrom(issueCopy(once))).toEqual(partsFrom(once));
});
