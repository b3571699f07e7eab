import { SheetTaken } from '../../src/hosts/sheetHost';
import type { SheetPlan } from '../../src/worksheets/plan';
import { plan as sample } from '../hosts/samplePlan';
import { computed, type Engine, formula, GridSheets } from './bundle';

/** Three forces from a given row on, and formulas that read them by name. */
function runPlan(name: string, row: number, forces: readonly number[]): SheetPlan {
  return {
    name,
    columns: [10, 10, 10],
    cells: [
      ...forces.map((value, i) => ({ at: `A${row + i}`, role: 'input' as const, value })),
      { at: 'C1', role: 'result', formula: '=SUM(forces)', format: '0.00' },
      { at: 'C2', role: 'result', formula: '=IF(C1>0,"","x")' },
      { at: 'C3', role: 'result', formula: '=1/0' },
      { at: 'D1', role: 'result', formula: '=forces/3', spill: { rows: 3, columns: 1 } },
      { at: 'E1', role: 'result', formula: '=COUNTIF(Forces,">0")&" forces"' },
    ],
    merges: ['A20:C20'],
    names: [{ name: 'forces', range: `A${row}:A${row + forces.length - 1}` }, { name: 'first', range: `A${row}` }],
  };
}

let engine: Engine;

beforeEach(async () => {
  engine = await computed({ name: 'Start', cells: [['text', 12.5, true, formula('=1/3')]] });
});

test('a written sheet is computed, is the last and is shown', async () => {
  const host = engine.sheetsHost();
  await host.write(runPlan('Run 1', 1, [1, 2, 3]));
  expect(await host.sheets()).toEqual([{ name: 'Start', empty: false }, { name: 'Run 1', empty: false }]);
  expect(await host.active()).toBe('Run 1');
  expect(engine.value('Run 1', 'C1')).toBe(6);
});

test('a sheet reads back with unrounded values, spilled cells, empty text and errors, and formulas in their own cell only', async () => {
  const host = engine.sheetsHost();
  await host.write(runPlan('Run 1', 1, [1, 2, 4]));
  expect(await host.read('Run 1')).toEqual({
    name: 'Run 1',
    cells: [
      { at: 'A1', value: 1 },
      { at: 'C1', value: 7, formula: '=SUM(forces)', format: '0.00' },
      { at: 'D1', value: 1 / 3, formula: '=forces/3' },
      { at: 'E1', value: '3 forces', formula: '=COUNTIF(Forces,">0")&" forces"' },
      { at: 'A2', value: 2 },
      { at: 'C2', value: '', formula: '=IF(C1>0,"","x")' },
      { at: 'D2', value: 2 / 3 },
      { at: 'A3', value: 4 },
      { at: 'C3', value: { error: '#DIV/0!' }, formula: '=1/0' },
      { at: 'D3', value: 4 / 3 },
    ],
    merges: ['A20:C20'],
    names: [{ name: 'forces', range: 'A1:A3' }, { name: 'first', range: 'A1' }],
  });
});

test('every cell, merge and name of a plan with one of everything reads back as the plan says', async () => {
  const host = engine.sheetsHost();
  await host.write(sample);
  const { cells, merges, names } = await host.read(sample.name);
  const read = new Map(cells.map((cell) => [cell.at, cell]));
  for (const { at, value, formula: typed, format } of sample.cells.filter((cell) => cell.value !== undefined || cell.formula !== undefined)) {
    expect(read.get(at)).toMatchObject({ at, ...(typed === undefined ? { value } : { formula: typed }), ...(format === undefined ? {} : { format }) });
  }
  expect(merges).toEqual(sample.merges);
  expect(names).toEqual(sample.names);
});

describe('names of a sheet', () => {
  test('mean that sheet’s cells, though another sheet has the same name and the same formula', async () => {
    const host = engine.sheetsHost();
    await host.write(runPlan("Bench 1's run", 1, [1, 2, 3]));
    await host.write(runPlan('Run 2', 5, [10, 20, 30]));
    expect([engine.value("Bench 1's run", 'C1'), engine.value('Run 2', 'C1')]).toEqual([6, 60]);
    await engine.set("Bench 1's run", 'A1', 101);
    expect([engine.value("Bench 1's run", 'C1'), engine.value('Run 2', 'C1')]).toEqual([106, 60]);
  });

  test('are known on other sheets only with the sheet before them', async () => {
    await engine.sheetsHost().write(runPlan("Bench 1's run", 1, [1, 2, 3]));
    await engine.set('Start', 'A5', formula("=SUM('Bench 1''s run'!forces)"));
    await engine.set('Start', 'A6', formula('=SUM(forces)'));
    expect(engine.value('Start', 'A5')).toBe(6);
    expect(engine.value('Start', 'A6')).toMatchObject({ error: '#NAME?' });
  });

  test('follow their sheet when it is renamed', async () => {
    await engine.sheetsHost().write(runPlan('Run 1', 1, [1, 2, 3]));
    await engine.command('sheet.command.set-worksheet-name', { unitId: engine.unitId, subUnitId: engine.sheet('Run 1').getSheetId(), name: 'Émile’s "run"' });
    await engine.set('Émile’s "run"', 'A1', 5);
    expect(engine.value('Émile’s "run"', 'C1')).toBe(10);
  });

  test('go with a copy of the sheet, for the copy’s own cells', async () => {
    const host = engine.sheetsHost();
    await host.write(runPlan("Bench 1's run", 1, [1, 2, 3]));
    await engine.command('sheet.command.copy-sheet', { unitId: engine.unitId, subUnitId: engine.sheet("Bench 1's run").getSheetId() });
    const copy = (await host.sheets()).map(({ name }) => name).find((name) => !['Start', "Bench 1's run"].includes(name))!;
    expect((await host.read(copy)).names).toHaveLength(2);
    await engine.set(copy, 'A1', 100);
    expect([engine.value(copy, 'C1'), engine.value("Bench 1's run", 'C1')]).toEqual([105, 6]);
  });

  test('grow with rows inserted among their cells', async () => {
    const host = engine.sheetsHost();
    await host.write(runPlan('Run 1', 1, [1, 2, 3]));
    await engine.command('sheet.command.insert-row', {
      unitId: engine.unitId, subUnitId: engine.sheet('Run 1').getSheetId(), direction: 2,
      range: { startRow: 1, endRow: 1, startColumn: 0, endColumn: 15, rangeType: 1 },
    });
    expect((await host.read('Run 1')).names[0]).toEqual({ name: 'forces', range: 'A1:A4' });
    await engine.set('Run 1', 'A2', 100);
    expect(engine.value('Run 1', 'C1')).toBe(106);
  });

  test('work in sheets given to the engine and in formulas that stand in no cell', async () => {
    const other = await computed(
      { name: 'One', cells: [[2, formula('=force*2')]], names: [{ name: 'force', range: 'A1' }] },
      { name: 'Two', cells: [[null, formula('=force*2')], [5]], names: [{ name: 'force', range: 'A2' }] },
    );
    expect([other.value('One', 'B1'), other.value('Two', 'B1')]).toEqual([4, 10]);
    expect([await other.evaluate('One', '=force+1'), await other.evaluate('Two', '=force+1')]).toEqual([3, 6]);
  });
});

describe('a sheet of the plan’s name', () => {
  test('with content is left alone, in small letters too, unless it is to be replaced', async () => {
    const host = engine.sheetsHost();
    await expect(host.write(runPlan('START', 1, [1, 2, 3]))).rejects.toMatchObject({ name: SheetTaken.name, sheet: 'Start' });
    expect(await host.sheets()).toEqual([{ name: 'Start', empty: false }]);
    expect(engine.value('Start', 'B1')).toBe(12.5);
  });

  test('is replaced when that is said, names included, and formulas of other sheets read the new one', async () => {
    const host = engine.sheetsHost();
    await host.write(runPlan('Run 1', 1, [1, 2, 3]));
    await engine.set('Start', 'A5', formula("='Run 1'!C1"));
    await host.write(runPlan('Run 1', 3, [10, 20, 30]), { replace: true });
    expect(await host.sheets()).toEqual([{ name: 'Start', empty: false }, { name: 'Run 1', empty: false }]);
    expect([engine.value('Run 1', 'C1'), engine.value('Start', 'A5')]).toEqual([60, 60]);
    expect((await host.read('Run 1')).names[0]).toEqual({ name: 'forces', range: 'A3:A5' });
  });

  test('without content gives its place, though it be the only one', async () => {
    const other = await computed({ name: 'Run 1', cells: [] });
    const host = other.sheetsHost();
    expect(await host.sheets()).toEqual([{ name: 'Run 1', empty: true }]);
    await host.write(runPlan('Run 1', 1, [1, 2, 3]));
    expect(await host.sheets()).toEqual([{ name: 'Run 1', empty: false }]);
    expect(other.value('Run 1', 'C1')).toBe(6);
  });
});

describe('a plan that fails leaves the workbook as it was', () => {
  let before: unknown;

  beforeEach(async () => {
    const host = engine.sheetsHost();
    await host.write(runPlan('Run 1', 1, [1, 2, 3]));
    before = await host.read('Run 1');
  });

  async function unchanged(): Promise<void> {
    const host = engine.sheetsHost();
    expect(await host.sheets()).toEqual([{ name: 'Start', empty: false }, { name: 'Run 1', empty: false }]);
    expect(await host.read('Run 1')).toEqual(before);
    await engine.set('Run 1', 'A1', 11);
    expect(engine.value('Run 1', 'C1')).toBe(16);
  }

  test('when it cannot be read', async () => {
    const broken = { ...runPlan('Run 1', 1, [7, 8, 9]), validations: [{ range: 'nowhere', rule: { kind: 'date' as const }, message: 'A date.' }] };
    await expect(engine.sheetsHost().write(broken, { replace: true })).rejects.toThrow('“Run 1” could not be written, and the workbook is as it was: found "nowhere"');
    await unchanged();
  });

  test('when its sheet is there already but cannot be shown', async () => {
    const { injector, workbook } = engine;
    const host = new GridSheets({ injector, workbook: () => workbook, goTo: () => Promise.reject(new Error('no room')) });
    await expect(host.write(runPlan('Run 1', 1, [7, 8, 9]), { replace: true })).rejects.toThrow('no room');
    await expect(host.write(runPlan('Run 2', 1, [7, 8, 9]))).rejects.toThrow('no room');
    await unchanged();
  });
});

test('a removed sheet is gone with its names; the only sheet stays', async () => {
  const host = engine.sheetsHost();
  await host.write(runPlan('Run 1', 1, [1, 2, 3]));
  await host.remove('Run 1');
  await expect(host.read('Run 1')).rejects.toThrow('There is no sheet “Run 1”');
  await expect(host.remove('Start')).rejects.toThrow('only sheet');
  await host.write(runPlan('Run 1', 5, [4, 5, 6]));
  expect((await host.read('Run 1')).names).toEqual([{ name: 'forces', range: 'A5:A7' }, { name: 'first', range: 'A5' }]);
});

test('listeners hear of typed values, of new sheets and of another sheet shown', async () => {
  const host = engine.sheetsHost();
  let calls = 0;
  host.onChange(() => { calls += 1; });
  const heard = async (change: () => Promise<void>): Promise<boolean> => {
    calls = 0;
    await change();
    return calls > 0;
  };
  expect(await heard(() => host.write(runPlan('Run 1', 1, [1, 2, 3])))).toBe(true);
  expect(await heard(() => engine.set('Run 1', 'A1', 9))).toBe(true);
  expect(await heard(() => host.select('Start', 'B1'))).toBe(true);
});
