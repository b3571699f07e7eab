/**
 * One plan in the three hosts: the grid computes it, the file and Excel (its stand-in) take the values from there. What each
 * reads back must be the same, cell for cell: value, formula, format; and names and merged ranges.
 */
import { ExcelSheets } from '../../src/hosts/excel/excelSheets';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { FileSheets } from '../../src/hosts/file/fileSheets';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import type { CellValue, SheetContent, SheetHost } from '../../src/hosts/sheetHost';
import type { Entry, SheetPlan } from '../../src/worksheets/plan';
import { readySheets } from '../../src/worksheets/readySheets';
import { FakeExcel } from '../hosts/excel/fakeExcel';
import { resultsOf } from '../hosts/excel/plans';
import { CellError, computed, Engine } from './bundle';

// Three hosts write each sheet, and a machine may have other work.
jest.setTimeout(60_000);

/** What every host tells. Names and merged ranges stand in no order, and empty text that a formula spills is as good as nothing. */
function compared({ name, cells, merges, names }: SheetContent) {
  const byText = <T>(list: readonly T[]) => list.map((item) => JSON.stringify(item)).sort();
  const told = cells.filter(({ value, formula }) => value !== '' || formula !== undefined).map(({ at, value, formula, format }) => ({ at, value, formula, format }));
  return { name, cells: told, merges: byText(merges), names: byText(names) };
}

async function readBack(host: SheetHost, plan: SheetPlan) {
  await host.write(plan);
  expect(await host.active()).toBe(plan.name);
  return compared(await host.read(plan.name));
}

async function valuesOf(plan: SheetPlan): Promise<(at: string) => CellValue> {
  const engine = new Engine(engineSheets([plan]));
  await engine.calculate();
  const read = (at: string): CellValue => {
    const value = engine.value(plan.name, at);
    return value instanceof CellError ? { error: value.error } : value;
  };
  const values = new Map(plan.cells.map(({ at }) => [at, read(at)]));
  engine.dispose();
  return (at) => values.get(at) ?? null;
}

const sheets = readySheets();
const plans = [[`${sheets[0].id}, empty`, sheets[0].empty] as const, ...sheets.map(({ id, filled }) => [`${id}, with readings`, filled] as const)];

test.each(plans)('%s: grid, file and Excel read back equal', async (_, plan) => {
  const grid = (await computed({ name: 'Start', cells: [['before']] })).sheetsHost();
  const valueOf = await valuesOf(plan);
  const file = new FileSheets(async () => (_sheet, at) => valueOf(at));
  const excel = new FakeExcel();
  excel.results = resultsOf({ plan, valueOf });
  const [ofGrid, ofFile, ofExcel] = [await readBack(grid, plan), await readBack(file, plan), await readBack(new ExcelSheets(excel.run, () => true), plan)];
  expect(ofFile.cells.length).toBeGreaterThan(100);
  expect(ofGrid).toEqual(ofFile);
  expect(ofExcel).toEqual(ofFile);
});

describe('filling the first inputs', () => {
  const filled = sheets.find(({ id }) => id === 'two-point')!.filled;
  const inputs = filled.cells.filter(({ role, value }) => role === 'input' && typeof value === 'number').slice(0, 5).map(({ at }) => at);
  const entries: Entry[] = inputs.map((at, i) => ({ at, value: [1.25, 'no reading', null, true, '12'][i] }));
  const after: SheetPlan = {
    ...filled, cells: filled.cells.map((cell) => (inputs.includes(cell.at) ? { ...cell, value: entries[inputs.indexOf(cell.at)].value ?? undefined } : cell)),
  };

  test('gives the same sheet in grid, file and Excel, and the same file from grid and file', async () => {
    const valueOf = await valuesOf(after);
    const grid = (await computed({ name: 'Start', cells: [['before']] })).sheetsHost(writeWorkbook);
    const file = new FileSheets(async () => (_sheet, at) => valueOf(at));
    const excel = new FakeExcel();
    excel.results = resultsOf({ plan: after, valueOf });
    const hosts: SheetHost[] = [grid, file, new ExcelSheets(excel.run, () => true)];
    for (const host of hosts) {
      await host.write(filled);
      await host.fill(filled.name, entries);
    }
    const [ofGrid, ofFile, ofExcel] = await Promise.all(hosts.map(async (host) => compared(await host.read(filled.name))));
    expect(ofFile.cells.find(({ at }) => at === inputs[1])?.value).toBe('no reading');
    expect(ofGrid).toEqual(ofFile);
    expect(ofExcel).toEqual(ofFile);
    const saved = readWorkbook(await grid.save()).find(({ name }) => name === filled.name)!;
    expect(compared(saved)).toEqual(ofFile);
  });

  test('of a locked cell is refused with the same words in all three', async () => {
    const locked = filled.cells.find(({ role, value }) => role === 'label' && value !== undefined)!.at;
    const valueOf = await valuesOf(filled);
    const excel = new FakeExcel();
    excel.results = resultsOf({ plan: filled, valueOf });
    const hosts: SheetHost[] = [
      (await computed({ name: 'Start', cells: [['before']] })).sheetsHost(), new FileSheets(async () => (_sheet, at) => valueOf(at)), new ExcelSheets(excel.run, () => true),
    ];
    for (const host of hosts) {
      await host.write(filled);
      await expect(host.fill(filled.name, [...entries, { at: locked, value: 1 }])).rejects.toThrow(`'${filled.name}'!${locked}: found a locked cell; expected one with a yellow ground. Nothing was filled.`);
    }
  });
});
