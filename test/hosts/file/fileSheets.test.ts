/** A workbook in memory: sheets are written, replaced, read back from the bytes of the file, and removed. */
import { FileSheets } from '../../../src/hosts/file/fileSheets';
import { readWorkbook } from '../../../src/hosts/file/readWorkbook';
import { SheetTaken } from '../../../src/hosts/sheetHost';
import type { PlanCell, SheetPlan } from '../../../src/worksheets/plan';
import { partsFrom } from './parts';
import { plan as samplePlan, sample } from './samplePlan';

/** A sheet with one input and its double. */
function planned(name: string, value: number, more: readonly PlanCell[] = []): SheetPlan {
  return { name, columns: [10], cells: [{ at: 'A1', role: 'input', value, format: '0.0' }, { at: 'B1', role: 'result', formula: '=A1*2' }, ...more] };
}

/** Doubles A1, and has no answer for a cell "Z9". */
const doubling = async (plans: readonly SheetPlan[]) => (sheet: string, at: string) => {
  if (at === 'Z9') return { error: '#SPILL!' };
  const input = plans.find(({ name }) => name === sheet)?.cells.find((cell) => cell.at === 'A1')?.value;
  return typeof input === 'number' ? input * 2 : null;
};

const host = () => new FileSheets(doubling);
const names = async (file: FileSheets) => readWorkbook(await file.save()).map(({ name }) => name);

describe('writing', () => {
  test('a plan becomes the last sheet and is shown; its cells come back from the file with values, formulas and formats', async () => {
    const file = host();
    await file.write(planned('Run 1', 3));
    await file.write(planned('Run 2', 4));
    expect(await file.sheets()).toEqual([{ name: 'Run 1', empty: false }, { name: 'Run 2', empty: false }]);
    expect(await file.active()).toBe('Run 2');
    expect(await file.read('run 1')).toEqual({
      name: 'Run 1', merges: [], names: [], cells: [{ at: 'A1', value: 3, format: '0.0' }, { at: 'B1', value: 6, formula: '=A1*2' }],
    });
    expect(await names(file)).toEqual(['Run 1', 'Run 2']);
  });

  test('merged blocks and names of a sheet come back from the file', async () => {
    const file = new FileSheets(async () => (_, at) => sample.values(at));
    await file.write(samplePlan);
    const read = await file.read(samplePlan.name);
    expect([...read.merges].sort()).toEqual([...samplePlan.merges ?? []].sort());
    expect([...read.names].sort((a, b) => b.name.localeCompare(a.name))).toEqual([...samplePlan.names ?? []].sort((a, b) => b.name.localeCompare(a.name)));
  });

  test('a sheet with content is replaced only when that was said; the new one is the last', async () => {
    const file = host();
    await file.write(planned('Run 1', 3));
    await file.write(planned('Run 2', 4));
    await expect(file.write(planned('RUN 1', 9))).rejects.toThrow(SheetTaken);
    await expect(file.write(planned('RUN 1', 9))).rejects.toThrow('The sheet “Run 1” already holds something.');
    expect((await file.read('Run 1')).cells[0].value).toBe(3);
    await file.write(planned('Run 1', 9), { replace: true });
    expect((await file.read('Run 1')).cells.map(({ value }) => value)).toEqual([9, 18]);
    expect(await names(file)).toEqual(['Run 2', 'Run 1']);
    expect(await file.active()).toBe('Run 1');
  });

  test('an empty sheet of that name is replaced without a word', async () => {
    const file = host();
    await file.write({ name: 'Run 1', columns: [10], cells: [{ at: 'A1', role: 'input' }, { at: 'A2', role: 'text', value: '' }] });
    expect(await file.sheets()).toEqual([{ name: 'Run 1', empty: true }]);
    await file.write(planned('Run 1', 3));
    expect(await file.sheets()).toEqual([{ name: 'Run 1', empty: false }]);
  });

  test('what the file cannot hold is refused, and everything stays as it was', async () => {
    const file = host();
    await file.write(planned('Run 1', 3));
    const before = await file.save();
    await expect(file.write(planned('Run 2', 4, [{ at: 'Z9', role: 'result', formula: '=A1' }]))).rejects.toThrow("'Run 2'!Z9: found #SPILL!");
    await expect(file.write(planned('Run/2', 4))).rejects.toThrow('found “Run/2”; expected a name without /');
    expect(await file.sheets()).toEqual([{ name: 'Run 1', empty: false }]);
    expect(await file.active()).toBe('Run 1');
    expect(await file.save()).toEqual(before);
  });

  test('of two plans written at once, neither is lost', async () => {
    const file = host();
    await Promise.all([file.write(planned('Run 1', 3)), file.write(planned('Run 2', 4))]);
    expect(await names(file)).toEqual(['Run 1', 'Run 2']);
  });
});

describe('filling', () => {
  const filled = (): SheetPlan => ({
    ...planned('Run 1', 3, [{ at: 'A2', role: 'input', format: '0.00' }, { at: 'C1', role: 'result', formula: '=A1*2', spill: { rows: 2, columns: 2 } }, { at: 'C2', role: 'result' }]),
    locked: true,
  });
  const cellsOf = async (file: FileSheets) => readWorkbook(await file.save())[0].cells;

  test('entries stand in the file with the format of their cell, and what reads them is computed anew', async () => {
    const file = host();
    await file.write(filled());
    await file.fill('run 1', [{ at: '$A$1', value: 7 }, { at: 'A2', value: '=12' }]);
    expect((await cellsOf(file)).filter(({ at }) => /^[AB]/.test(at))).toEqual([
      { at: 'A1', value: 7, format: '0.0' }, { at: 'B1', value: 14, formula: '=A1*2' }, { at: 'A2', value: '=12', format: '0.00' },
    ]);
    await file.fill('Run 1', [{ at: 'A1', value: null }, { at: 'A2', value: '' }]);
    expect((await cellsOf(file)).filter(({ at }) => /^A/.test(at))).toEqual([]);
  });

  test.each([
    ['B1', 'found a formula; expected a cell for entries'], ['D2', 'found a result that the formula of C1 spills into it'],
    ['C2', 'found a result that the formula of C1 spills into it'], ['E5', 'found a locked cell'],
  ])('%s is refused by its address, and everything stays as it was', async (at, words) => {
    const file = host();
    await file.write(filled());
    const before = await file.save();
    await expect(file.fill('Run 1', [{ at: 'A1', value: 9 }, { at, value: 1 }])).rejects.toThrow(`'Run 1'!${at}: ${words}`);
    expect(await file.save()).toEqual(before);
  });

  test('on a sheet that is not locked a cell that its plan does not have takes an entry', async () => {
    const file = host();
    await file.write(planned('Run 1', 3));
    await file.fill('Run 1', [{ at: 'D4', value: true }, { at: 'D5', value: null }]);
    expect((await cellsOf(file)).at(-1)).toEqual({ at: 'D4', value: true });
  });

  test('a sheet that is not there and a cell named twice are refused in words', async () => {
    const file = host();
    await file.write(filled());
    await expect(file.fill('Run 2', [])).rejects.toThrow('The workbook has no sheet “Run 2”.');
    await expect(file.fill('Run 1', [{ at: 'A1', value: 1 }, { at: 'a1', value: 1 }])).rejects.toThrow("'Run 1'!A1: found two entries for it");
  });
});

describe('removing and selecting', () => {
  test('a sheet that is removed is gone from the file, and its neighbour is shown', async () => {
    const file = host();
    for (const name of ['A', 'B', 'C']) await file.write(planned(name, 1));
    await file.remove('C');
    expect(await file.active()).toBe('B');
    await file.remove('A');
    expect([await file.active(), await names(file)]).toEqual(['B', ['B']]);
  });

  test('without a sheet there is no file', async () => {
    const file = host();
    await expect(file.save()).rejects.toThrow('The workbook has no sheet; a file needs at least one.');
    await expect(file.active()).rejects.toThrow('The workbook has no sheet.');
    await file.write(planned('A', 1));
    await file.remove('a');
    await expect(file.save()).rejects.toThrow('needs at least one');
  });

  test('the file opens at the sheet and the cells that were selected', async () => {
    const file = host();
    await file.write({ ...planned('A', 1), frozenRows: 2 });
    await file.write(planned('B', 1));
    await file.write(planned('C', 1));
    await file.select('B', '$b$7:c9');
    await file.select('a', 'B4');
    expect(await file.active()).toBe('A');
    const parts = partsFrom(await file.save());
    expect(parts['xl/worksheets/sheet1.xml']).toMatch(/<sheetView tabSelected="1"[^>]*><pane [^>]*\/><selection pane="bottomLeft" activeCell="B4" sqref="B4"\/><\/sheetView>/);
    expect(parts['xl/worksheets/sheet2.xml']).toMatch(/<sheetView workbookViewId="0"><selection activeCell="B7" sqref="B7:C9"\/><\/sheetView>/);
    await file.select('B', 'A1');
    const later = partsFrom(await file.save());
    expect(later['xl/workbook.xml']).toMatch(/<workbookView [^>]*activeTab="1"/);
    expect(Object.keys(later).filter((name) => / tabSelected="1"/.test(later[name]))).toEqual(['xl/worksheets/sheet2.xml']);
  });

  test('a sheet that is not there, and what is no address, are refused in words', async () => {
    const file = host();
    await file.write(planned('A', 1));
    for (const call of [() => file.read('D'), () => file.remove('D'), () => file.select('D', 'A1')]) {
      await expect(call()).rejects.toThrow('The workbook has no sheet “D”.');
    }
    await expect(file.select('A', 'first')).rejects.toThrow('found "first"; expected a cell address like B4');
  });

  test('a listener is told of what was written, selected and removed, and of nothing that failed', async () => {
    const file = host();
    const told: number[] = [];
    file.onChange(() => told.push(told.length));
    await file.write(planned('A', 1));
    await expect(file.write(planned('A', 1))).rejects.toThrow(SheetTaken);
    expect(told).toHaveLength(1);
    await file.select('A', 'B4');
    await file.remove('A');
    expect(told).toHaveLength(3);
  });
});
