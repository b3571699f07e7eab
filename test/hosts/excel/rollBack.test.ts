/** Excel's batches are no transactions: wherever one stops, the workbook must be as it was before. */
import { ExcelSheets } from '../../../src/hosts/excel/excelSheets';
import { FakeExcel } from './fakeExcel';
import type { FakeWorkbook } from './fakeState';
import { large, type Planned, resultsOf, sample } from './plans';

type Start = (excel: FakeExcel, name: string) => void;

const beside: Start = (excel) => {
  Object.assign(excel.workbook.sheets[0].cells, { A1: { value: 'kept' } });
  excel.add('Second').cells.B2 = { formula: '=Sheet1!A1' };
};

const STARTS: readonly (readonly [string, Start])[] = [
  ['a new sheet', beside],
  ['an empty sheet that is replaced', (excel, name) => {
    beside(excel, name);
    excel.add(name).cells.A1 = { numberFormat: '0.00' };
  }],
  ['a full sheet that is replaced', (excel, name) => {
    const old = excel.add(name.toUpperCase());
    beside(excel, name);
    Object.assign(old.cells, { A1: { value: 'old' }, B7: { formula: '=A1' } });
    old.names.push({ name: 'forces', range: 'A1:A3', visible: true });
    old.merges.push('C1:D1');
    excel.workbook.active = old.id;
  }],
  ['a sheet that replaces the only one', (excel, name) => {
    Object.assign(excel.workbook.sheets[0], { name });
    excel.workbook.sheets[0].cells.A1 = { value: 'old' };
  }],
];

function started(planned: Planned, start: Start): { excel: FakeExcel; sheets: ExcelSheets; before: FakeWorkbook; write: () => Promise<void> } {
  const excel = new FakeExcel();
  excel.results = resultsOf(planned);
  start(excel, planned.plan.name);
  const sheets = new ExcelSheets(excel.run, () => true);
  return { excel, sheets, before: structuredClone(excel.workbook), write: () => sheets.write(planned.plan, { replace: true }) };
}

async function callsOf(planned: Planned, start: Start): Promise<number> {
  const { excel, write } = started(planned, start);
  excel.reset();
  await write();
  return excel.calls.length;
}

test.each([
  ...STARTS.map(([words, start]) => [words, sample, start] as const),
  ['a large sheet in the place of a full one', large, STARTS[2][1]] as const,
])('%s: a fault at any call leaves the workbook as it was', async (_, planned, start) => {
  const calls = await callsOf(planned, start);
  expect(calls).toBeGreaterThan(50);
  for (let call = 1; call <= calls; call += 1) {
    const { excel, before, write } = started(planned, start);
    excel.reset({ code: 'GeneralException', call });
    await expect(write()).rejects.toThrow('Excel refused a step on the sheet');
    expect({ call, workbook: excel.workbook }).toEqual({ call, workbook: before });
  }
});

test.each(STARTS)('%s: a sync that fails before anything is carried out leaves the workbook as it was', async (_, start) => {
  for (const sync of [1, 2]) {
    const { excel, before, write } = started(sample, start);
    excel.reset({ code: 'HostIsBusy', sync });
    await expect(write()).rejects.toThrow('Excel is busy. Try again in a moment.');
    expect(excel.workbook).toEqual(before);
  }
});

test('a new sheet of which the answer got lost is removed again', async () => {
  const { excel, before, write } = started(sample, beside);
  excel.reset({ code: 'RequestAborted', sync: 2, late: true });
  await expect(write()).rejects.toThrow('Excel is busy');
  expect(excel.workbook).toEqual(before);
});

test('a replaced sheet of which the answer got lost stays, since the old one cannot come back', async () => {
  const { excel, sheets, write } = started(sample, STARTS[2][1]);
  excel.reset({ code: 'RequestAborted', sync: 2, late: true });
  await write();
  expect(excel.workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Second', sample.plan.name]);
  expect((await sheets.read(sample.plan.name)).names).toEqual(sample.plan.names);
});

test('a sheet that someone else adds meanwhile is kept', async () => {
  const { excel, write } = started(sample, beside);
  excel.reset({ code: 'GeneralException', call: 60 });
  excel.meanwhile = (sync) => { if (sync === 2) excel.add('From a colleague'); };
  await expect(write()).rejects.toThrow();
  expect(excel.workbook.sheets.map(({ name }) => name)).toEqual(['Sheet1', 'Second', 'From a colleague']);
});

test('an open cell is explained at once, and nothing waits for it to be left', async () => {
  const { excel, before, write } = started(sample, beside);
  excel.reset({ code: 'InvalidOperationInCellEditMode', sync: 2 });
  await expect(write()).rejects.toThrow('Press Enter or Esc to leave it, then try again.');
  expect(excel.workbook).toEqual(before);
  expect(excel.syncs).toBe(2);
  expect(excel.options).toEqual([{}]);
});

test('taking back waits until a cell is no longer edited', async () => {
  const { excel, write } = started(sample, beside);
  excel.reset({ code: 'GeneralException', call: 30 });
  await expect(write()).rejects.toThrow();
  expect(excel.options).toEqual([{}, { delayForCellEdit: true }]);
});

test('the step that failed is named, and what Office says for programmers is not', async () => {
  const { excel, write } = started(sample, beside);
  excel.reset({ code: 'GeneralException', call: 30 });
  const failure = await write().catch((error: Error) => error);
  expect((failure as Error).message).toMatch(/\(GeneralException at \w+\.\w+\)/);
  expect((failure as Error).message).not.toContain('inner detail');
});

test('if taking back fails too, the words say what is left over', async () => {
  const { excel, write } = started(sample, STARTS[2][1]);
  excel.reset({ code: 'AccessDenied', sync: 2, lasting: true });
  await expect(write()).rejects.toThrow(
    "Excel then refused to clear up as well: delete “Sheet being built” if it is there and give “Sheet being replaced” its name “BENCH 1'S RUN” back.",
  );
});
