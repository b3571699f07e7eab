import { ExcelSheets } from '../../../src/hosts/excel/excelSheets';
import { FakeExcel } from './fakeExcel';

function workbook(...names: readonly string[]) {
  const excel = new FakeExcel();
  for (const name of names) excel.add(name);
  return { excel, sheets: new ExcelSheets(excel.run, () => true) };
}

test('the sheets are told in their order, with those that hold nothing', async () => {
  const { excel, sheets } = workbook('Run', 'Notes');
  excel.workbook.sheets[1].cells.D4 = { value: false };
  excel.workbook.sheets[2].cells.A1 = { numberFormat: '0.0' };
  excel.reset();
  expect(await sheets.sheets()).toEqual([{ name: 'Sheet1', empty: true }, { name: 'Run', empty: false }, { name: 'Notes', empty: true }]);
  expect(excel.syncs).toBe(2);
});

test('a sheet is removed', async () => {
  const { excel, sheets } = workbook('Run');
  await sheets.remove('run');
  expect(excel.workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1']);
});

test('the first of several sheets can be removed, and another is shown', async () => {
  const { excel, sheets } = workbook('Run');
  await sheets.remove('Sheet1');
  expect(excel.workbook.sheets.map(({ name }) => name)).toEqual(['Run']);
  expect(await sheets.active()).toBe('Run');
});

test('the only sheet in sight is kept, and the words say why', async () => {
  const { excel, sheets } = workbook('Hidden');
  excel.workbook.sheets[1].visibility = 'Hidden';
  await expect(sheets.remove('sheet1')).rejects.toThrow('“Sheet1” is the only sheet in sight, and Excel keeps one. Add a sheet first.');
  expect(excel.workbook.sheets).toHaveLength(2);
});

test('a hidden sheet can be removed while one sheet is in sight', async () => {
  const { excel, sheets } = workbook('Hidden');
  excel.workbook.sheets[1].visibility = 'Hidden';
  await sheets.remove('Hidden');
  expect(excel.workbook.sheets).toHaveLength(1);
});

test('selecting shows the sheet and selects the range', async () => {
  const { excel, sheets } = workbook('Run');
  await sheets.select('Run', 'B4:C9');
  expect(excel.workbook.active).toBe(excel.workbook.sheets[1].id);
  expect(excel.workbook.sheets[1].selection).toBe('B4:C9');
  expect(await sheets.active()).toBe('Run');
});

test('selecting in a hidden sheet says how to show it', async () => {
  const { excel, sheets } = workbook('Run');
  excel.workbook.sheets[1].visibility = 'Hidden';
  await expect(sheets.select('run', 'A1')).rejects.toThrow('The sheet “Run” is hidden. Right-click a sheet tab and choose Unhide.');
  expect(excel.workbook.active).toBe(excel.workbook.sheets[0].id);
});

test.each([
  ['read', (sheets: ExcelSheets) => sheets.read('Gone')],
  ['remove', (sheets: ExcelSheets) => sheets.remove('Gone')],
  ['select', (sheets: ExcelSheets) => sheets.select('Gone', 'A1')],
])('%s of a sheet that is not there names it', async (_, ask) => {
  await expect(ask(workbook('Run').sheets)).rejects.toThrow('There is no sheet “Gone” in the workbook.');
});

test('reading waits while a cell is edited; removing and selecting are refused with words', async () => {
  const { excel, sheets } = workbook('Run');
  await sheets.read('Run');
  await sheets.sheets();
  await sheets.active();
  expect(excel.options).toEqual([{ delayForCellEdit: true }, { delayForCellEdit: true }, { delayForCellEdit: true }]);
  for (const ask of [() => sheets.remove('Run'), () => sheets.select('Run', 'A1')]) {
    excel.reset({ code: 'InvalidOperationInCellEditMode', sync: 1 });
    await expect(ask()).rejects.toThrow('Excel is editing a cell. Press Enter or Esc to leave it, then try again.');
    expect(excel.options.at(-1)).toEqual({});
  }
});

test('a blank sheet is read as one without cells, merges and names', async () => {
  expect(await workbook('Run').sheets.read('run')).toEqual({ name: 'Run', cells: [], merges: [], names: [] });
});

test('every listener is told of a change, a calculation, another sheet, and sheets that come, go or change their name', async () => {
  const { excel, sheets } = workbook();
  const told: string[] = [];
  sheets.onChange(() => told.push('first'));
  sheets.onChange(() => told.push('second'));
  await new Promise((resolve) => { setTimeout(resolve, 0); });
  expect([...excel.handlers.keys()].sort()).toEqual(['onActivated', 'onAdded', 'onCalculated', 'onChanged', 'onDeleted', 'onNameChanged']);
  for (const handler of excel.handlers.values()) await handler();
  expect(told).toHaveLength(12);
});

test('an Excel of the manifest’s version is not asked for what came later', async () => {
  const { excel } = workbook();
  const asked: string[] = [];
  const sheets = new ExcelSheets(excel.run, (version) => {
    asked.push(version);
    return false;
  });
  excel.workbook.sheets[0].merges.push('A1:B1');
  sheets.onChange(() => undefined);
  expect((await sheets.read('Sheet1')).merges).toEqual([]);
  expect(excel.handlers.has('onNameChanged')).toBe(false);
  expect(asked.sort()).toEqual(['1.13', '1.17']);
});

test('if Excel refuses to tell of changes, the next thing that is asked of it asks again', async () => {
  const { excel, sheets } = workbook();
  excel.reset({ code: 'HostIsBusy', sync: 1 });
  sheets.onChange(() => undefined);
  await new Promise((resolve) => { setTimeout(resolve, 0); });
  expect(excel.handlers.size).toBe(0);
  await sheets.active();
  await new Promise((resolve) => { setTimeout(resolve, 0); });
  expect(excel.handlers.size).toBe(6);
});

test('reading keeps texts that look like formulas apart from formulas, and leaves out names that Excel made', async () => {
  const { excel, sheets } = workbook('Run');
  excel.results = new Map([['=A1', [['=A1 as text']]], ['=1/0', [[{ error: '#DIV/0!' }]]]]);
  Object.assign(excel.workbook.sheets[1], {
    cells: { B2: { value: '=A1' }, C2: { formula: '=A1' }, B3: { formula: '=1/0', numberFormat: '0.0' } },
    names: [{ name: 'Print_Area', range: 'A1:C3', visible: true }, { name: 'kept', range: 'B2:C2', visible: true }, { name: 'hidden', range: 'B2', visible: false }],
  });
  expect(await sheets.read('Run')).toEqual({
    name: 'Run',
    cells: [
      { at: 'B2', value: '=A1' },
      { at: 'C2', value: '=A1 as text', formula: '=A1' },
      { at: 'B3', value: { error: '#DIV/0!' }, formula: '=1/0', format: '0.0' },
    ],
    merges: [],
    names: [{ name: 'kept', range: 'B2:C2' }],
  });
});
