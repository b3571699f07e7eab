/** A sheet of the grid as a plan: what was written comes back, and what a person changed since is in it. */
import { placeOf, rangeOf } from '../../src/hosts/address';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import { ROLE_LOOKS } from '../../src/hosts/roleLooks';
import { rowHeights } from '../../src/hosts/sheetLayout';
import { firstWorkbook } from '../../src/worksheets/firstWorkbook';
import type { CellRole, PlanCell, SheetPlan } from '../../src/worksheets/plan';
import { readySheets } from '../../src/worksheets/readySheets';
import { plan as sample } from '../hosts/samplePlan';
import { computed, type Engine } from './bundle';

const byPlace = (a: PlanCell, b: PlanCell) => placeOf(a.at).row - placeOf(b.at).row || placeOf(a.at).column - placeOf(b.at).column;

/** "F74:F74" → "F74". */
function oneCell(range: string): string {
  return range.replace(/^([A-Z]+\d+):\1$/, '$1');
}

/** Of roles that look the same, the first. */
function seen(role: CellRole): CellRole {
  return role === 'stated' ? 'formula' : role;
}

/** What a sheet shows of a plan: cells under a merged block show nothing, nor does a spill of one cell or an empty text. */
function shown(plan: SheetPlan) {
  const merges = (plan.merges ?? []).map((merge) => ({ merge, ...rangeOf(merge) }));
  const covered = ({ at }: PlanCell) => {
    const { row, column } = placeOf(at);
    return merges.some((range) => row >= range.startRow && row <= range.endRow && column >= range.startColumn && column <= range.endColumn &&
      (row !== range.startRow || column !== range.startColumn));
  };
  const cells = plan.cells.filter((cell) => !covered(cell)).sort(byPlace).map(({ at, role, value, formula, format, lines }) =>
    ({ at, role: seen(role), value: value === '' ? undefined : value, formula, format, wraps: ROLE_LOOKS[role].wrapped || lines !== undefined }));
  return {
    ...plan,
    cells,
    merges: merges.map(({ merge }) => merge).filter((merge) => merge.includes(':')).sort(),
    names: [...plan.names ?? []],
    validations: [...plan.validations ?? []],
    charts: [...plan.charts ?? []],
    highlights: (plan.highlights ?? []).map((highlight) => ({ ...highlight, range: oneCell(highlight.range), formula: `=${highlight.formula.replace(/^=/, '')}` })),
    locked: plan.locked ?? false,
    frozenRows: plan.frozenRows ?? 0,
    heights: [...rowHeights(plan)].sort(([a], [b]) => a - b),
  };
}

async function written(plan: SheetPlan): Promise<Engine> {
  const engine = await computed({ name: 'Before', cells: [['before']] });
  await engine.sheetsHost().write(plan);
  return engine;
}

const plans = [
  ['the sample', sample] as const,
  ...firstWorkbook().map((plan) => [`the first workbook: ${plan.name}`, plan] as const),
  ...readySheets().flatMap(({ id, filled, empty }) => [[`${id}, with readings`, filled] as const, [`${id}, empty`, empty] as const]),
];

test.each(plans)('%s comes back as it was written', async (_, plan) => {
  const engine = await written(plan);
  expect(shown(engine.planOf(plan.name))).toEqual(shown(plan));
});

test('a formula that spills has the size that it takes now', async () => {
  const cells: PlanCell[] = [{ at: 'A1', role: 'input', value: 2 }, { at: 'B1', role: 'result', formula: '=SEQUENCE(A1,2)', spill: { rows: 2, columns: 2 } }];
  const engine = await written({ name: 'Run', columns: [10], cells });
  await engine.sheetsHost().fill('Run', [{ at: 'A1', value: 3 }]);
  expect(engine.planOf('Run').cells.find(({ at }) => at === 'B1')?.spill).toEqual({ rows: 3, columns: 2 });
});

test('what was typed since is in it, with the look of its cell; a cell beside the plan is a label', async () => {
  const engine = await written({ ...sample, locked: false });
  const host = engine.sheetsHost();
  await host.fill(sample.name, [{ at: 'A5', value: 7 }, { at: 'A12', value: null }, { at: 'L40', value: 'a remark' }]);
  const cells = new Map(engine.planOf(sample.name).cells.map((cell) => [cell.at, cell]));
  expect(cells.get('A5')).toEqual({ at: 'A5', role: 'input', value: 7, format: '0.0' });
  expect(cells.get('A12')).toEqual({ at: 'A12', role: 'input' });
  expect(cells.get('L40')).toEqual({ at: 'L40', role: 'label', value: 'a remark' });
});

test('rows inserted since have moved everything: looks, names, rules and highlights', async () => {
  const engine = await written({ ...sample, locked: false, charts: [] });
  await engine.command('sheet.command.insert-row', {
    unitId: engine.unitId, subUnitId: engine.sheet(sample.name).getSheetId(), direction: 2, range: { startRow: 6, endRow: 7, startColumn: 0, endColumn: 15, rangeType: 1 },
  });
  const plan = engine.planOf(sample.name);
  expect(plan.names).toEqual([{ name: 'forces', range: 'A5:A11' }, { name: 'first_force', range: 'A5' }]);
  expect(plan.cells.find(({ at }) => at === 'A11')).toMatchObject({ role: 'input', value: 20, format: '0.0' });
  expect(plan.cells.find(({ at }) => at === 'A13')).toMatchObject({ role: 'label', value: '=SUM(A5:A9) as text' });
  expect(plan.validations?.[0].range).toBe('A5:A11');
  expect(plan.validations?.[1].range).toBe('C14');
  expect(plan.merges).toEqual(['A1:E1', 'A2:E2', 'A13:C13', 'A15:C15']);
});

test('a look that a person changed keeps the role, and with it the lock', async () => {
  const engine = await written(sample);
  const place = { unitId: engine.unitId, subUnitId: engine.sheet(sample.name).getSheetId() };
  const style = (row: number, column: number, s: object) =>
    engine.command('sheet.mutation.set-range-values', { ...place, cellValue: { [row]: { [column]: { s } } } });
  await style(4, 0, { bg: { rgb: '#123456' }, bl: 1 });
  await style(6, 4, { bl: 1, fs: 14 });
  const cells = new Map(engine.planOf(sample.name).cells.map((cell) => [cell.at, cell.role]));
  expect([cells.get('A5'), cells.get('E7')]).toEqual(['input', 'result']);
});

describe('a workbook saved from the grid', () => {
  test('holds every sheet in its order, with the values as computed, the one that was shown in front', async () => {
    const engine = await written(sample);
    const host = engine.sheetsHost(writeWorkbook);
    await host.write({ ...sample, name: 'Second', charts: [] });
    await host.fill('Second', [{ at: 'A6', value: 9 }]);
    await host.select('Before', 'A1');
    const read = readWorkbook(await host.save());
    expect(read.map(({ name }) => name)).toEqual(['Before', sample.name, 'Second']);
    expect(read[2].cells.find(({ at }) => at === 'D5')).toEqual({ at: 'D5', value: 9.1, formula: '=A6+0.1', format: '0.00' });
    for (const sheet of read) {
      const { cells } = await host.read(sheet.name);
      const told = (list: readonly { at: string; value: unknown; formula?: string }[]) => list.map(({ at, value, formula }) => ({ at, value, formula }));
      expect(told(sheet.cells)).toEqual(told(cells.filter(({ value, formula }) => value !== '' || formula !== undefined)));
    }
  });

  test('a workbook stored before plans could be read back saves as well', async () => {
    const engine = await computed({ name: 'Mine', cells: [['words', 1.5, true], [{ formula: '=B1*2' }]] });
    const [sheet] = readWorkbook(await engine.sheetsHost(writeWorkbook).save());
    expect(sheet).toEqual({
      name: 'Mine', merges: [], names: [],
      cells: [{ at: 'A1', value: 'words' }, { at: 'B1', value: 1.5 }, { at: 'C1', value: true }, { at: 'A2', value: 3, formula: '=B1*2' }],
    });
  });

  test('a formula that a file cannot hold is named by its cell', async () => {
    const engine = await computed({ name: 'Mine', cells: [[1, { formula: '=NOSUCH(A1)' }]] });
    await expect(engine.sheetsHost(writeWorkbook).save()).rejects.toThrow("The workbook could not be saved as a file: 'Mine'!B1: found #NAME?; expected a value");
  });

  test('without a writer it is refused in words', async () => {
    const engine = await computed({ name: 'Mine', cells: [[1]] });
    await expect(engine.sheetsHost().save()).rejects.toThrow('This workbook cannot be saved as a file');
  });
});
