/** Filling cells in Excel: what is asked of it, what is refused, and what is left when a call fails. */
import { ExcelSheets } from '../../../src/hosts/excel/excelSheets';
import type { Entry, SheetPlan } from '../../../src/worksheets/plan';
import { FakeExcel } from './fakeExcel';
import { resultsOf } from './plans';

const PLAN: SheetPlan = {
  name: 'Run 1',
  columns: [10, 10, 10],
  cells: [
    { at: 'A1', role: 'label', value: 'Force' }, { at: 'A2', role: 'input', value: 1, format: '0.0' }, { at: 'A3', role: 'input', value: '12' }, { at: 'A4', role: 'input' },
    { at: 'B2', role: 'input', value: true }, { at: 'C2', role: 'result', formula: '=A2*2' },
    { at: 'D2', role: 'result', formula: '=TWO(A2)', spill: { rows: 2, columns: 1 } },
  ],
  locked: true,
};
const ENTRIES: readonly Entry[] = [{ at: 'A2', value: 10 }, { at: 'B2', value: null }, { at: 'A3', value: '=not a formula' }, { at: 'A4', value: '2026-11-25' }];

async function written(plan: SheetPlan = PLAN) {
  const excel = new FakeExcel();
  excel.results = resultsOf({ plan: PLAN, valueOf: (at) => (at === 'C2' ? 2 : 3) });
  const sheets = new ExcelSheets(excel.run, () => true);
  await sheets.write(plan);
  excel.reset();
  return { excel, sheets };
}

/** What each input holds, by its address. */
async function inputs(sheets: ExcelSheets) {
  const { cells } = await sheets.read('Run 1');
  return Object.fromEntries(cells.filter(({ at }) => ['A2', 'A3', 'A4', 'B2'].includes(at)).map(({ at, value, formula }) => [at, formula ?? value]));
}

test('entries stand in their cells, text as text, in two syncs', async () => {
  const { excel, sheets } = await written();
  await sheets.fill('run 1', ENTRIES);
  expect(excel.syncs).toBe(2);
  expect(await inputs(sheets)).toEqual({ A2: 10, A3: '=not a formula', A4: '2026-11-25' });
  expect((await sheets.read('Run 1')).cells.find(({ at }) => at === 'A2')?.format).toBe('0.0');
});

test('cells one below the other are filled in one assignment', async () => {
  const { excel, sheets } = await written();
  await sheets.fill('Run 1', ENTRIES);
  expect(excel.calls.filter((call) => call === 'Range.formulas')).toHaveLength(2);
});

test('no entries ask nothing of Excel', async () => {
  const { excel, sheets } = await written();
  await sheets.fill('Run 1', []);
  expect(excel.syncs).toBe(0);
});

test.each([['C2', 'found a formula'], ['D2', 'found a formula'], ['D3', 'found a result that the formula of D2 spills into it'], ['A1', 'found a locked cell'], ['F9', 'found a locked cell']])(
  '%s is refused by its address before anything is filled', async (at, words) => {
    const { excel, sheets } = await written();
    const before = await inputs(sheets);
    excel.reset();
    await expect(sheets.fill('Run 1', [...ENTRIES, { at, value: 1 }])).rejects.toThrow(`'Run 1'!${at}: ${words}`);
    expect(excel.syncs).toBe(1);
    expect(await inputs(sheets)).toEqual(before);
  });

test('on a sheet that is not protected, cells that are locked by format take entries', async () => {
  const { sheets } = await written({ ...PLAN, locked: false });
  await sheets.fill('Run 1', [{ at: 'A1', value: 'Force, kN' }, { at: 'F9', value: 5 }]);
  expect((await sheets.read('Run 1')).cells.filter(({ at }) => ['A1', 'F9'].includes(at)).map(({ value }) => value)).toEqual(['Force, kN', 5]);
});

test('a sheet that is not there, and a cell named twice, are refused in words', async () => {
  const { sheets } = await written();
  await expect(sheets.fill('Gone', ENTRIES)).rejects.toThrow('There is no sheet “Gone” in the workbook.');
  await expect(sheets.fill('Run 1', [{ at: 'A2', value: 1 }, { at: '$A$2', value: 2 }])).rejects.toThrow("'Run 1'!A2: found two entries for it");
});

test('while a cell is edited nothing is filled, and the words say how to leave it', async () => {
  const { excel, sheets } = await written();
  const before = await inputs(sheets);
  for (const sync of [1, 2]) {
    excel.reset({ code: 'InvalidOperationInCellEditMode', sync });
    await expect(sheets.fill('Run 1', ENTRIES)).rejects.toThrow('Excel is editing a cell. Press Enter or Esc to leave it, then try again.');
    excel.reset();
    expect(await inputs(sheets)).toEqual(before);
  }
});

test('whichever call fails, every cell is as it was and the words say what Excel refused', async () => {
  const { excel, sheets } = await written();
  const before = await inputs(sheets);
  await sheets.fill('Run 1', []);
  excel.reset();
  const counting = await written();
  await counting.sheets.fill('Run 1', ENTRIES);
  const calls = counting.excel.calls.length;
  expect(calls).toBeGreaterThan(20);
  for (let call = 1; call <= calls; call += 1) {
    excel.reset({ code: 'GeneralException', call });
    await expect(sheets.fill('Run 1', ENTRIES)).rejects.toThrow('Excel refused a step on the sheet “Run 1” (GeneralException at ');
    excel.reset();
    expect([call, await inputs(sheets)]).toEqual([call, before]);
  }
});

test.each([1, 2])('if sync %i fails as a whole or its answer is lost, every cell is as it was', async (sync) => {
  const { excel, sheets } = await written();
  const before = await inputs(sheets);
  for (const late of [false, true]) {
    excel.reset({ code: 'RequestAborted', sync, late });
    await expect(sheets.fill('Run 1', ENTRIES)).rejects.toThrow('Excel is busy. Try again in a moment.');
    excel.reset();
    expect(await inputs(sheets)).toEqual(before);
  }
});

test('if Excel also refuses to take it back, the words name the cells to look at', async () => {
  const { excel, sheets } = await written();
  excel.reset({ code: 'RequestAborted', sync: 2, lasting: true });
  await expect(sheets.fill('Run 1', ENTRIES)).rejects.toThrow('Excel then refused to take it back as well: look at A2, B2, A3, A4, which may be filled in part.');
});
