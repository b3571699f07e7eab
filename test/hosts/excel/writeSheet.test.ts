/** What is written into the stand-in for Excel: cell for cell, in few syncs, as the plan says. */
import { ExcelSheets } from '../../../src/hosts/excel/excelSheets';
import { SheetTaken } from '../../../src/hosts/sheetHost';
import { FONT, INK } from '../../../src/hosts/roleLooks';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { FakeExcel } from './fakeExcel';
import type { FakeSheet } from './fakeState';
import { expectedCells, large, type Planned, resultsOf, sample } from './plans';

function excelFor(...planned: readonly Planned[]) {
  const excel = new FakeExcel();
  excel.results = resultsOf(...planned);
  return { excel, sheets: new ExcelSheets(excel.run, () => true) };
}

async function written(planned: Planned): Promise<{ excel: FakeExcel; sheets: ExcelSheets; sheet: FakeSheet }> {
  const { excel, sheets } = excelFor(planned);
  await sheets.write(planned.plan);
  return { excel, sheets, sheet: sheetNamed(excel, planned.plan.name) };
}

function sheetNamed(excel: FakeExcel, name: string): FakeSheet {
  const found = excel.workbook.sheets.find((sheet) => sheet.name === name);
  if (!found) throw new Error(`no sheet "${name}"`);
  return found;
}

function planOf(cells: SheetPlan['cells'], rest: Partial<SheetPlan> = {}): Planned {
  return { plan: { name: 'Run', columns: [10], cells, ...rest }, valueOf: () => 1 };
}

const formatOf = (sheet: FakeSheet, at: string): Excel.CellPropertiesFormat | undefined =>
  (sheet.cells[at]?.properties as Excel.SettableCellProperties | undefined)?.format;

test.each([['the sample', sample], ['a large sheet', large]])('%s: values, formulas, formats, merges and names are read back as planned', async (_, planned) => {
  const { sheets } = await written(planned);
  const read = await sheets.read(planned.plan.name);
  expect(read.cells).toEqual(expectedCells(planned));
  expect(read.name).toBe(planned.plan.name);
  expect([...read.merges].sort()).toEqual([...(planned.plan.merges ?? [])].sort());
  expect(read.names).toEqual(planned.plan.names ?? []);
});

test('the large plan has some 600 cells, so that the count of syncs means something', () => {
  expect(large.plan.cells.length).toBeGreaterThan(540);
});

test.each([['the sample', sample], ['a large sheet', large]])('%s is written in two syncs and fewer than 200 calls, and read in one sync', async (_, planned) => {
  const { excel, sheets } = excelFor(planned);
  excel.reset();
  await sheets.write(planned.plan);
  expect(excel.syncs).toBe(2);
  expect(excel.calls.length).toBeLessThan(200);
  excel.reset();
  await sheets.read(planned.plan.name);
  expect(excel.syncs).toBe(1);
});

test('replacing takes two syncs too', async () => {
  const { excel, sheets } = await written(sample);
  excel.reset();
  await sheets.write(sample.plan, { replace: true });
  expect(excel.syncs).toBe(2);
});

test('calculation and the screen stand still while a sheet is written, and the sheet is computed before its place is cleared', async () => {
  const { excel, sheets } = await written(sample);
  excel.reset();
  await sheets.write(sample.plan, { replace: true });
  const writing = excel.calls.slice(excel.calls.indexOf('Application.suspendApiCalculationUntilNextSync'));
  expect(writing.slice(0, 3)).toEqual(['Application.suspendApiCalculationUntilNextSync', 'Application.suspendScreenUpdatingUntilNextSync', 'WorksheetCollection.add']);
  expect(writing.slice(-2)).toEqual(['Worksheet.calculate', 'Worksheet.delete']);
});

test('a new sheet stands last, is shown, and leaves no sheet under another name', async () => {
  const { excel } = await written(sample);
  expect(excel.workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', sample.plan.name]);
  expect(excel.workbook.active).toBe(excel.workbook.sheets[1].id);
});

test('names that a sheet has while it is built make way for those in the workbook', async () => {
  const { excel, sheets } = excelFor(sample);
  excel.add('sheet being built');
  excel.add('Sheet being replaced');
  excel.add(sample.plan.name);
  await sheets.write(sample.plan);
  expect(excel.workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', 'sheet being built', 'Sheet being replaced', sample.plan.name]);
});

test('a sheet with content is kept, and SheetTaken names it as it is spelt there', async () => {
  const { excel, sheets } = excelFor(sample);
  excel.add("BENCH 1'S RUN").cells.C3 = { value: 7 };
  const before = structuredClone(excel.workbook);
  await expect(sheets.write(sample.plan)).rejects.toThrow(new SheetTaken("BENCH 1'S RUN"));
  expect(excel.workbook).toEqual(before);
});

test('a formula alone is content too', async () => {
  const { excel, sheets } = excelFor(sample);
  excel.add(sample.plan.name).cells.C3 = { formula: '=A1' };
  await expect(sheets.write(sample.plan)).rejects.toBeInstanceOf(SheetTaken);
});

test('a sheet with looks but no content gives up its place', async () => {
  const { excel, sheets } = excelFor(sample);
  const old = excel.add(sample.plan.name);
  old.cells.A1 = { numberFormat: '0.0' };
  await sheets.write(sample.plan);
  expect(excel.workbook.sheets).toHaveLength(2);
  expect(excel.workbook.sheets).not.toContain(old);
});

test('a sheet with content is replaced if that is asked for', async () => {
  const { excel, sheets } = excelFor(sample);
  const old = excel.add(sample.plan.name);
  old.cells.Z99 = { value: 'old' };
  await sheets.write(sample.plan, { replace: true });
  expect(excel.workbook.sheets).not.toContain(old);
  expect((await sheets.read(sample.plan.name)).cells).toEqual(expectedCells(sample));
});

test('nothing is typed where a formula spills, but those cells take their looks', async () => {
  const { sheet } = await written(sample);
  for (const at of ['B6', 'B9', 'C5', 'C9']) {
    expect(sheet.cells[at].value).toBeUndefined();
    expect(sheet.cells[at].formula).toBeUndefined();
    expect(sheet.cells[at].numberFormat).toBe('0.000%');
    expect(formatOf(sheet, at)?.fill).toEqual({ color: '#eaf4f2' });
  }
});

test('a value where a formula spills is refused before Excel is asked for anything', async () => {
  const { excel, sheets } = excelFor();
  const { plan } = planOf([{ at: 'A1', role: 'result', formula: '=B1:B3', spill: { rows: 3, columns: 1 } }, { at: 'A2', role: 'input', value: 4 }]);
  await expect(sheets.write(plan)).rejects.toThrow("'Run'!A2: found 4; expected a free cell, since the formula of A1 spills into it");
  expect(excel.syncs).toBe(0);
});

test.each([
  ['a number that is none', { cells: [{ at: 'B2', role: 'input', value: NaN }] }, "'Run'!B2: found NaN"],
  ['a sheet name with a slash', { name: '1/2' }, 'found “1/2”; expected a name without /'],
  ['a list with a comma in a word', { validations: [{ range: 'A1', rule: { kind: 'list', words: ['a,b'] }, message: 'm' }] }, 'found "a,b" in a list'],
  ['a message longer than Excel takes', { validations: [{ range: 'A1', rule: { kind: 'date' }, message: 'm'.repeat(226) }] }, 'found a message of 226 letters'],
  ['a chart without series', { charts: [{ title: 't', over: 'A1:B9', x: 'x', y: 'y', series: [] }] }, 'found a chart without series'],
] as const)('%s is refused by name, and the workbook stays as it was', async (_, part, words) => {
  const { excel, sheets } = excelFor();
  const before = structuredClone(excel.workbook);
  await expect(sheets.write({ ...planOf([{ at: 'A1', role: 'label', value: 'x' }]).plan, ...part } as SheetPlan)).rejects.toThrow(words);
  expect(excel.workbook).toEqual(before);
});

test('a text that looks like a formula is marked, and plain words are not', async () => {
  const { sheet } = await written(sample);
  expect(sheet.cells.A11).toMatchObject({ value: '=SUM(A5:A9) as text', quoted: true });
  expect(sheet.cells.A1).toMatchObject({ value: 'Sample of a run' });
  expect(sheet.cells.A1.quoted).toBeUndefined();
});

test('a cell without a format is said to be general, since formulas take over formats', async () => {
  const { sheet } = await written(sample);
  expect(sheet.cells.D6.numberFormat).toBe('General');
});

test('roles have the looks that every host gives them', async () => {
  const { sheet } = await written(sample);
  expect(sheet.font).toEqual({ name: FONT, size: 10, color: INK });
  expect(formatOf(sheet, 'A1')).toMatchObject({ font: { bold: true, size: 18, color: '#0b6e6e' } });
  expect(formatOf(sheet, 'A2')).toMatchObject({ wrapText: true, fill: { color: '#fff3d6' }, verticalAlignment: 'Top' });
  expect(formatOf(sheet, 'A4')).toMatchObject({ horizontalAlignment: 'Right', verticalAlignment: 'Bottom', borders: { bottom: { style: 'Continuous' } } });
  expect(formatOf(sheet, 'D4')).toMatchObject({ horizontalAlignment: 'Right' });
  expect(formatOf(sheet, 'A13')).toMatchObject({ horizontalAlignment: 'Left', indentLevel: 1 });
  expect(Object.keys(formatOf(sheet, 'A5')?.borders ?? {}).sort()).toEqual(['bottom', 'left', 'right', 'top']);
});

test('merged cells take the look of the first', async () => {
  const { sheet } = await written(sample);
  expect(formatOf(sheet, 'E2')).toEqual(formatOf(sheet, 'A2'));
});

test('only inputs can be typed into, and columns and rows may be made wider', async () => {
  const { sheet } = await written(sample);
  const open = Object.keys(sheet.cells).filter((at) => formatOf(sheet, at)?.protection?.locked === false);
  expect(open.sort()).toEqual(sample.plan.cells.filter(({ role }) => role === 'input').map(({ at }) => at).sort());
  expect(sheet.protection).toEqual({ allowFormatColumns: true, allowFormatRows: true });
});

test('a plan that is not locked leaves the sheet open', async () => {
  expect((await written(large)).sheet.protection).toBeUndefined();
});

test('columns and rows are as wide and high as planned, in points', async () => {
  const { sheet } = await written(sample);
  expect(sheet.columns[0]).toEqual({ format: { columnWidth: 113 * 0.75 } });
  expect(sheet.rows[9]).toEqual({ format: { rowHeight: 16.5 } });
  // Rows under the chart and the print area too, so that both come out as planned.
  expect(sheet.rows[31]).toEqual({ format: { rowHeight: 16.5 } });
  expect((sheet.rows[1] as { format: { rowHeight: number } }).format.rowHeight).toBeGreaterThan(16.5);
});

test('a page begins with a part of the sheet that would be cut', async () => {
  const { sheet } = await written(planOf([{ at: 'A1', role: 'heading', value: 'First' }, { at: 'A30', role: 'heading', value: 'Second' }], { columns: [80], print: { area: 'A1:A60', landscape: false } }));
  expect(sheet.pageBreaks).toEqual(['A30']);
});

test('frozen rows, page and print set-up are as planned', async () => {
  const { sheet } = await written(sample);
  expect(sheet.frozenRows).toBe(4);
  expect(sheet.page).toMatchObject({
    paperSize: 'A4', orientation: 'Landscape', zoom: { horizontalFitToPages: 1 }, titleRows: '$1:$4',
    headersFooters: { defaultForAllPages: { leftFooter: '&A', rightFooter: '&P / &N' } },
  });
  expect(sheet.names.find(({ name }) => name === 'Print_Area')?.range).toBe('A1:E32');
});

test('a sheet without a print plan is upright unless it is wide', async () => {
  expect((await written(planOf([], { columns: [20] }))).sheet.page.orientation).toBe('Portrait');
  expect((await written(planOf([], { columns: [60, 60] }))).sheet.page.orientation).toBe('Landscape');
});

test('what may be typed in is checked, with blanks allowed', async () => {
  const { sheet } = await written(sample);
  expect(sheet.validations['A5:A9']).toEqual({
    rule: { decimal: { formula1: 0, operator: 'GreaterThanOrEqualTo' } }, ignoreBlanks: true,
    errorAlert: { title: 'Check the entry', message: 'A force of 0 or more & below "overload".', showAlert: true, style: 'Stop' },
  });
  expect(sheet.validations.C12.rule).toEqual({ list: { source: 'tension,compression', inCellDropDown: true } });
  expect(sheet.validations.B12.rule).toEqual({ wholeNumber: { formula1: 1, formula2: 9, operator: 'Between' } });
  const dated = sample.plan.validations?.find(({ rule }) => rule.kind === 'date')?.range ?? '';
  expect(sheet.validations[dated].rule).toEqual({ date: { formula1: '1900-01-01', formula2: '9999-12-31', operator: 'Between' } });
});

test('highlights keep their order, since Excel puts each new one first', async () => {
  const { sheet } = await written(sample);
  expect(sheet.highlights.map(({ custom }) => (custom.rule as { formula: string }).formula)).toEqual(['=ABS($B5)<0.0002', '=ABS($B5)>=0.0002', '=D5="yes"']);
  expect(sheet.highlights[1]).toMatchObject({ range: 'B5:B9', type: 'Custom', custom: { format: { font: { bold: true, color: '#a3201d' }, fill: { color: '#fbe4e2' } } } });
});

test('a chart is a native scatter chart over its range, each series with its own ranges, colour and marker', async () => {
  const { sheet } = await written(sample);
  const [chart] = sheet.charts;
  expect(chart).toMatchObject({ type: 'XYScatter', place: 'A15:E30', props: { title: { text: 'Deviation from the terminal line' } } });
  expect(chart.series).toMatchObject((sample.plan.charts?.[0].series ?? []).map(({ name, x, y }) => ({ name, x, y })));
  expect(chart.series).toMatchObject([
    { name: 'Run 1', x: 'A5:A9', y: 'B5:B9', chartType: 'XYScatter', markerStyle: 'Circle', markerBackgroundColor: '#0b6e6e' },
    { name: 'Fit', chartType: 'XYScatterLinesNoMarkers', format: { line: { color: '#8a5a00', weight: 1.5 } } },
    { name: 'Limit', chartType: 'XYScatterLinesNoMarkers', format: { line: { color: '#a3201d', lineStyle: 'Dash' } } },
    { name: 'Run 2', chartType: 'XYScatterLines', markerStyle: 'Diamond' },
  ]);
  expect(chart.props.axes).toMatchObject({ categoryAxis: { title: { text: 'Force, kN' } }, valueAxis: { title: { text: 'of rated output' } } });
});

test('a chart of values along a row makes one series of them', async () => {
  const { sheet } = await written(large);
  expect(sheet.charts[0]).toMatchObject({ by: 'Rows', series: [{ name: 'Across', x: 'B3:D3', y: 'E3:G3' }] });
});
