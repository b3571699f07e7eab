/** The file as Excel must find it, part by part. */
import { XMLValidator } from 'fast-xml-parser';
import { firstWorkbook } from '../../../src/worksheets/firstWorkbook';
import { cellXml, partsOf } from './parts';
import { sample } from './samplePlan';

let parts: Record<string, string>;
let sheet: string;
beforeAll(async () => {
  parts = await partsOf(sample);
  sheet = parts['xl/worksheets/sheet1.xml'];
});

/** The cell style that a cell names. */
function style(at: string): string {
  const index = Number(/ s="(\d+)"/.exec(cellXml(sheet, at))?.[1]);
  return parts['xl/styles.xml'].split('<cellXfs')[1].split(/(?=<xf )/)[index + 1];
}

describe('parts of a workbook file', () => {
  test('every part is well-formed', () => {
    for (const [name, xml] of Object.entries(parts)) expect([name, XMLValidator.validate(xml)]).toEqual([name, true]);
  });

  test('every part has a content type', () => {
    const types = parts['[Content_Types].xml'];
    for (const name of Object.keys(parts).filter((part) => part !== '[Content_Types].xml' && !part.endsWith('.rels'))) {
      expect(types).toContain(`PartName="/${name}"`);
    }
  });

  test('Excel shows the stored values first: no recalculation on opening', () => {
    expect(parts['xl/workbook.xml']).toContain('<calcPr calcId="191029"/>');
    expect(JSON.stringify(parts)).not.toContain('fullCalcOnLoad');
  });

  test('a custom function that spills is a dynamic array with its value, by the name that Excel stores', () => {
    expect(cellXml(sheet, 'B5')).toMatch(/ cm="1"><f t="array" ref="B5:C9">_xldudf_PROVE_DEVIATIONS\(A5:A9,A5:A9\)<\/f><v>0<\/v>/);
    expect(parts['xl/metadata.xml']).toMatch(/<metadataType name="XLDAPR" [^>]*cellMeta="1"/);
    expect(parts['xl/metadata.xml']).toContain('<xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/>');
    expect(parts['xl/metadata.xml']).toContain('<cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata>');
    expect(parts['xl/_rels/workbook.xml.rels']).toMatch(/Type="[^"]*sheetMetadata" Target="metadata.xml"/);
  });

  test('no formula is stored as typed, and no cell holds #NAME?', async () => {
    const files = [parts, await partsOf(...firstWorkbook().map((plan) => ({ plan, values: () => 1 })))];
    for (const file of files) {
      const sheets = Object.entries(file).filter(([name]) => name.startsWith('xl/worksheets/sheet')).map(([, xml]) => xml);
      const formulas = sheets.flatMap((xml) => [...xml.matchAll(/<f[^>]*>(.*?)<\/f>/g)].map(([, formula]) => formula.replace(/"[^"]*"/g, '')));
      expect(formulas.length).toBeGreaterThan(5);
      for (const formula of formulas) expect(formula).not.toMatch(/^=|PROVE\./);
      for (const xml of sheets) expect(xml).not.toContain('#NAME?');
    }
  });

  test('a formula of single cells is a plain one; one that computes with a range is a dynamic array', () => {
    expect(cellXml(sheet, 'D5')).toMatch(/^<c r="D5" s="\d+"><f>A6\+0\.1<\/f><v>0\.30000000000000004<\/v><\/c>$/);
    expect(cellXml(sheet, 'E8')).toContain(' cm="1"><f t="array" ref="E8">SUM(forces*B5:B9)/SUM(A5:A9)</f>');
  });

  test('functions newer than 2007 carry their prefix', () => {
    expect(cellXml(sheet, 'E7')).toContain('<f>_xlfn.T.INV.2T(0.05,10)</f><v>2.2281388519649385</v>');
  });

  test('values of formulas keep their kind: text that looks like a number, a truth value or nothing stays text', () => {
    for (const [at, kind, value] of [
      ['D6', 'str', 'yes'], ['D7', 'str', ''], ['D8', 'str', '12'], ['D9', 'str', 'TRUE'], ['E5', 'b', '1'], ['E6', 'e', '#DIV/0!'],
    ]) {
      expect(cellXml(sheet, at)).toContain(` t="${kind}"><f>`);
      expect(cellXml(sheet, at)).toContain(`<v>${value}</v>`);
    }
  });

  test('an error among spilled values is an error, not text', () => {
    expect(cellXml(sheet, 'C7')).toMatch(/^<c r="C7" s="\d+" t="e"><v>#N\/A<\/v><\/c>$/);
  });

  test('text that starts with "=" or "-" is text, and stays text when it is edited', () => {
    for (const at of ['A11', 'A12']) {
      expect(cellXml(sheet, at)).toMatch(/^<c r="A1[12]" s="\d+" t="s"><v>\d+<\/v><\/c>$/);
      expect(style(at)).toContain(' quotePrefix="1"');
    }
    expect(parts['xl/sharedStrings.xml']).toContain('>=SUM(A5:A9) as text<');
  });

  test('a date is a number of days with the format of a date', () => {
    expect(cellXml(sheet, 'E12')).toMatch(/^<c r="E12" s="\d+"><v>46351<\/v><\/c>$/);
    const id = / numFmtId="(\d+)"/.exec(style('E12'))?.[1];
    expect(parts['xl/styles.xml']).toContain(`<numFmt numFmtId="${id}" formatCode="yyyy-mm-dd"/>`);
  });

  test('the sheet is locked without a password, its inputs are not', () => {
    expect(sheet).toMatch(/<sheetProtection sheet="1"[^>]*\/>/);
    expect(sheet).not.toMatch(/<sheetProtection[^>]*(password|hash)/i);
    for (const at of ['A5', 'A12', 'B12', 'C12', 'E12']) expect(style(at)).toContain('<protection locked="0"/>');
    for (const at of ['A1', 'B5', 'D5', 'D12']) expect(style(at)).not.toContain('locked="0"');
  });

  test('what may be typed is checked, with the message', () => {
    expect(sheet).toContain('<dataValidations count="4">');
    expect(sheet).toContain(
      '<dataValidation type="decimal" allowBlank="1" showErrorMessage="1" error="A force of 0 or more &amp; below &quot;overload&quot;." sqref="A5:A9">' +
      '<formula1>0</formula1><formula2>9.99E+307</formula2></dataValidation>');
    expect(sheet).toContain('sqref="C12"><formula1>&quot;tension,compression&quot;</formula1></dataValidation>');
    expect(sheet).toMatch(/type="whole"[^>]*sqref="B12"><formula1>1<\/formula1><formula2>9<\/formula2>/);
    expect(sheet).toMatch(/type="date"[^>]*sqref="E12"><formula1>1<\/formula1><formula2>2958465<\/formula2>/);
  });

  test('highlights name looks that are there', () => {
    const rules = [...sheet.matchAll(/<conditionalFormatting sqref="(.*?)"><cfRule type="expression" dxfId="(\d)" priority="(\d)"><formula>(.*?)<\/formula>/g)];
    expect(rules.map(([, range, look, priority, formula]) => [range, look, priority, formula])).toEqual([
      ['B5:B9', '0', '1', 'ABS($B5)&lt;0.0002'], ['B5:B9', '1', '2', 'ABS($B5)&gt;=0.0002'], ['D5:D9', '2', '3', 'D5=&quot;yes&quot;'],
    ]);
    expect(parts['xl/styles.xml'].match(/<dxf>/g)).toHaveLength(3);
    expect(parts['xl/styles.xml']).toContain('<dxfs count="3">');
  });

  test('parts of a sheet stand in the order that the schema asks for', () => {
    const order = ['sheetPr', 'dimension', 'sheetViews', 'sheetFormatPr', 'cols', 'sheetData', 'sheetProtection', 'mergeCells', 'conditionalFormatting',
      'dataValidations', 'pageMargins', 'pageSetup', 'headerFooter', 'drawing'];
    const places = order.map((name) => sheet.search(new RegExp(`<${name}[ >/]`)));
    expect(Math.min(...places)).toBeGreaterThan(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('names belong to their sheet', () => {
    expect(parts['xl/workbook.xml']).toContain(`<definedName name="forces" localSheetId="0">'Bench 1''s run'!$A$5:$A$9</definedName>`);
    expect(parts['xl/workbook.xml']).toContain(`<definedName name="first_force" localSheetId="0">'Bench 1''s run'!$A$5</definedName>`);
  });

  test('the sheet prints its area across, one page wide, with the head on every page', () => {
    expect(sheet).toContain('<pageSetUpPr fitToPage="1"/>');
    expect(sheet).toMatch(/<pageSetup paperSize="9" fitToHeight="0" orientation="landscape"/);
    expect(parts['xl/workbook.xml']).toContain(`<definedName name="_xlnm.Print_Area" localSheetId="0">'Bench 1''s run'!$A$1:$E$32</definedName>`);
    expect(parts['xl/workbook.xml']).toContain(`<definedName name="_xlnm.Print_Titles" localSheetId="0">'Bench 1''s run'!$1:$4</definedName>`);
  });

  test('rows stay in view and columns are as wide as planned', () => {
    expect(sheet).toMatch(/<pane ySplit="4" topLeftCell="A5" activePane="bottomLeft" state="frozen"\/>/);
    const widths = [...sheet.matchAll(/<col min="(\d+)" max="\d+" width="([\d.]+)"/g)].map(([, , width]) => Number(width));
    // Pixels as on the screen, less the padding, in figures of 7 pixels.
    sample.plan.columns.forEach((characters, i) => expect(widths[i]).toBeCloseTo((Math.round(characters * 7.5 + 8)) / 7, 1));
  });

  test('a chart draws points, lines and limits from the cells', () => {
    const series = parts['xl/charts/chart1.xml'].split('<c:ser>').slice(1);
    expect(series).toHaveLength(4);
    expect(series[0]).toMatch(/<c:spPr><a:ln[^>]*><a:noFill\/><\/a:ln><\/c:spPr><c:marker><c:symbol val="circle"\/>/);
    expect(series[1]).toMatch(/<a:srgbClr.*?<c:marker><c:symbol val="none"\/>/);
    expect(series[2]).toMatch(/<a:prstDash val="dash"\/>.*?<c:marker><c:symbol val="none"\/>/);
    expect(series[2]).toContain(`<c:xVal><c:numRef><c:f>'Bench 1''s run'!$I$5:$I$6</c:f>`);
    expect(series[2]).toContain(`<c:yVal><c:numRef><c:f>'Bench 1''s run'!$J$5:$J$6</c:f>`);
    expect(series[3]).toMatch(/<a:srgbClr.*?<c:marker><c:symbol val="square"\/>|<a:srgbClr.*?<c:marker><c:symbol val="diamond"\/>/);
    expect(series[0]).toContain(`<c:xVal><c:numRef><c:f>'Bench 1''s run'!$A$5:$A$9</c:f>`);
    expect(series[0]).toContain(`<c:yVal><c:numRef><c:f>'Bench 1''s run'!$B$5:$B$9</c:f>`);
  });

  test('the look of a series stands before its marker, as the schema asks', () => {
    for (const series of parts['xl/charts/chart1.xml'].split('<c:ser>').slice(1)) {
      expect(series).toMatch(/<\/c:tx><c:spPr>.*<\/c:spPr><c:marker>.*<\/c:marker><c:xVal>/);
    }
  });
});
