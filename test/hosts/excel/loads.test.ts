/** With the mock of the Office add-in tools: a property that was not loaded, or not synced after loading, is not read. */
import { OfficeMockObject } from 'office-addin-mock';
import { ExcelSheets } from '../../../src/hosts/excel/excelSheets';
import type { RunExcel } from '../../../src/hosts/excel/selection';

const mock = (parts: object): OfficeMockObject => {
  const made = new OfficeMockObject({ host: 'excel', isNullObject: false, ...parts }, 'excel' as never);
  // As in Office.js, whether an object is null is known after a sync without being loaded.
  made.load('isNullObject');
  return made;
};

/** A workbook with one sheet, of which every part is a mock. */
function workbook(): { sheets: ExcelSheets; syncs: () => number } {
  let syncs = 0;
  const used = mock({
    rowIndex: 3, columnIndex: 1, formulas: [['=A1*2', 'ok'], [0.5, '']], values: [[4, 'ok'], [0.5, '']],
    valueTypes: [['Double', 'String'], ['Double', 'Empty']], numberFormat: [['0.00', 'General'], ['General', '0']],
  });
  const merged = mock({ address: "'It''s, 1'!A1:B1, 'It''s, 1'!A3:C3" });
  const names = { items: [], load: () => undefined };
  const sheet: OfficeMockObject = mock({
    name: "It's, 1", visibility: 'Visible', getUsedRangeOrNullObject: () => used,
    getRange: () => ({ getMergedAreasOrNullObject: () => merged, select: () => undefined }), activate: () => undefined,
  });
  Object.assign(sheet, { names });
  const worksheets = { getItem: () => sheet, getActiveWorksheet: () => sheet };
  const context = {
    workbook: { worksheets },
    sync: async () => {
      syncs += 1;
      await Promise.all([used.sync(), merged.sync(), sheet.sync()]);
    },
  };
  const run = (async (_: unknown, batch: (context: Excel.RequestContext) => Promise<unknown>) =>
    batch(context as unknown as Excel.RequestContext)) as RunExcel;
  return { sheets: new ExcelSheets(run, () => true), syncs: () => syncs };
}

test('reading a sheet loads all that it reads, in one sync', async () => {
  const { sheets, syncs } = workbook();
  expect(await sheets.read("It's, 1")).toEqual({
    name: "It's, 1",
    cells: [
      { at: 'B4', value: 4, formula: '=A1*2', format: '0.00' },
      { at: 'C4', value: 'ok' },
      { at: 'B5', value: 0.5 },
    ],
    merges: ['A1:B1', 'A3:C3'],
    names: [],
  });
  expect(syncs()).toBe(1);
});

test('the name of the sheet that is shown is loaded before it is told', async () => {
  expect(await workbook().sheets.active()).toBe("It's, 1");
});

test('whether a sheet is in sight is loaded before something in it is selected', async () => {
  const { sheets, syncs } = workbook();
  await sheets.select("It's, 1", 'A1');
  expect(syncs()).toBe(2);
});
