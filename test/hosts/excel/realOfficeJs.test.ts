/** With the real Office.js in front: it takes every call, and sends as few requests as the stand-in counts syncs. */
import { ExcelSheets } from '../../../src/hosts/excel/excelSheets';
import { large, sample } from './plans';
import { realOfficeJs } from './realOfficeJs';

const BLANK = { Worksheets: { _Items: [{ Id: '{1}', Name: 'Sheet1', Visibility: 'Visible' }] }, GetActiveWorksheet: { Id: '{1}', Name: 'Sheet1' } };

test.each([['the sample', sample], ['a large sheet', large]])('%s is written in two requests', async (_, { plan }) => {
  const { run, requests } = realOfficeJs(BLANK);
  await new ExcelSheets(run, () => true).write(plan);
  expect(requests).toHaveLength(2);
  expect(requests[1].filter((call) => call.includes('.formulas = '))).toHaveLength(2);
  expect(requests[1].filter((call) => /\.numberFormat = |\.setCellProperties\(/.test(call))).toHaveLength(2);
  expect(requests[1].at(-3)).toContain(`.name = ${JSON.stringify(plan.name)}`);
});

test('a sheet is read in one request, with the names that say what a range of it is', async () => {
  const { run, requests } = realOfficeJs({
    // An item by its key is reached by no member of a name.
    '': { Name: 'Run' },
    GetUsedRangeOrNullObject: {
      RowIndex: 0, ColumnIndex: 1, Formulas: [['=1+1', 'x']], Values: [[2, 'x']], ValueTypes: [['Double', 'String']], NumberFormat: [['0.0', 'General']],
    },
    Names: {
      _Items: [
        { Name: 'all', Formula: '=Run!$B$1:$C$1', Type: 'Range', Visible: true },
        { Name: 'elsewhere', Formula: '=Other!$B$1', Type: 'Range', Visible: true },
        { Name: 'two_parts', Formula: '=Run!$B$1,Run!$C$1', Type: 'Range', Visible: true },
        { Name: 'constant', Formula: '=5', Type: 'Double', Visible: true },
      ],
    },
    GetMergedAreasOrNullObject: { Address: 'Run!A3:B3, Run!D3:E4' },
  });
  expect(await new ExcelSheets(run, () => true).read('Run')).toEqual({
    name: 'Run',
    cells: [{ at: 'B1', value: 2, formula: '=1+1', format: '0.0' }, { at: 'C1', value: 'x' }],
    merges: ['A3:B3', 'D3:E4'],
    names: [{ name: 'all', range: 'B1:C1' }],
  });
  expect(requests).toHaveLength(1);
});

test('cells are filled in two requests, those one below the other in one call', async () => {
  const { run, requests } = realOfficeJs({
    '': { Name: 'Run' }, GetRange: { Formulas: [['']], Values: [['']] }, Protection: { Protected: true, Locked: false }, GetSpillParentOrNullObject: null,
  });
  await new ExcelSheets(run, () => true).fill('Run', [{ at: 'B2', value: 1 }, { at: 'B3', value: '12' }, { at: 'D2', value: null }]);
  expect(requests).toHaveLength(2);
  expect(requests[1].filter((call) => call.includes('.formulas = '))).toHaveLength(2);
  expect(requests[1].join('\n')).toContain('"B2:B3"');
});

test('the sheets are told in two requests', async () => {
  const { run, requests } = realOfficeJs(BLANK);
  expect(await new ExcelSheets(run, () => true).sheets()).toEqual([{ name: 'Sheet1', empty: true }]);
  expect(requests).toHaveLength(2);
});

test('a refusal as Office.js words it reaches the user with its code and place, after the sheet is taken back', async () => {
  const { run, requests } = realOfficeJs(BLANK, { request: 2, code: 'GeneralException', location: 'PageLayout.paperSize' });
  await expect(new ExcelSheets(run, () => true).write(sample.plan)).rejects.toThrow('(GeneralException at PageLayout.paperSize)');
  expect(requests).toHaveLength(4);
  expect(requests[3].at(-1)).toContain('.activate()');
});
