/** Filling cells of a sheet in the grid's engine: what is taken, what is refused, and undo. */
import type { SheetPlan } from '../../src/worksheets/plan';
import { computed, type Engine, formula } from './bundle';

const PLAN: SheetPlan = {
  name: 'Run 1',
  columns: [10, 10, 10],
  cells: [
    { at: 'A1', role: 'label', value: 'Force' },
    { at: 'A2', role: 'input', value: 1, format: '0.0' }, { at: 'A3', role: 'input', value: 2 }, { at: 'A4', role: 'input' },
    { at: 'B2', role: 'result', formula: '=SUM(forces)' },
    { at: 'C2', role: 'result', formula: '=forces*2', spill: { rows: 3, columns: 1 } },
    { at: 'D2', role: 'result', formula: '=A3&"|"&ISTEXT(A3)' },
  ],
  names: [{ name: 'forces', range: 'A2:A4' }],
  locked: true,
};

let engine: Engine;

beforeEach(async () => {
  engine = await computed({ name: 'Start', cells: [['text', 12.5, formula('=B1*2')], [null, null, formula("='Run 1'!B2")]] });
  await engine.sheetsHost().write(PLAN);
});

const cells = async (sheet = 'Run 1') => (await engine.sheetsHost().read(sheet)).cells;

test('entries stand in their cells and everything that reads them is computed when the promise resolves, on other sheets too', async () => {
  await engine.sheetsHost().fill('run 1', [{ at: 'A2', value: 10 }, { at: '$A$3', value: 20 }, { at: 'a4', value: 30.5 }]);
  expect(['B2', 'C2', 'C3', 'C4'].map((at) => engine.value('Run 1', at))).toEqual([60.5, 20, 40, 61]);
  expect(engine.value('Start', 'C2')).toBe(60.5);
  expect((await cells()).find(({ at }) => at === 'A2')).toEqual({ at: 'A2', value: 10, format: '0.0' });
});

test('null and empty text empty a cell, whose look stays', async () => {
  await engine.sheetsHost().fill('Run 1', [{ at: 'A2', value: null }, { at: 'A3', value: '' }]);
  expect((await cells()).map(({ at }) => at)).not.toEqual(expect.arrayContaining(['A2']));
  expect(engine.value('Run 1', 'B2')).toBe(0);
  await engine.sheetsHost().fill('Run 1', [{ at: 'A2', value: 3 }]);
  expect((await cells()).find(({ at }) => at === 'A2')).toEqual({ at: 'A2', value: 3, format: '0.0' });
});

test.each(['12', '2026-11-25', 'TRUE', '=B2', '1/2', '10 %', "'quoted", ' 7', '#N/A?', '1e5'])('the text %j stays text', async (text) => {
  await engine.sheetsHost().fill('Run 1', [{ at: 'A3', value: text }]);
  expect((await cells()).find(({ at }) => at === 'A3')).toEqual({ at: 'A3', value: text });
  expect(engine.value('Run 1', 'D2')).toBe(`${text}|TRUE`);
});

test('true and false are truth values', async () => {
  await engine.sheetsHost().fill('Run 1', [{ at: 'A3', value: true }, { at: 'A4', value: false }]);
  expect((await cells()).filter(({ at }) => /A[34]/.test(at)).map(({ value }) => value)).toEqual([true, false]);
});

test.each([
  ['B2', 'found a formula'], ['C2', 'found a formula'], ['C3', 'found a result that the formula of C2 spills into it'],
  ['A1', 'found a locked cell; expected one with a yellow ground'], ['E9', 'found a locked cell'], ['A99999', 'found a cell outside of the sheet'],
])('%s is refused by its address, and nothing is filled', async (at, words) => {
  const before = await cells();
  await expect(engine.sheetsHost().fill('Run 1', [{ at: 'A2', value: 99 }, { at, value: 1 }])).rejects.toThrow(`'Run 1'!${at}: ${words}`);
  expect(await cells()).toEqual(before);
});

test('a cell named twice, no address, no number and no sheet are refused in words', async () => {
  const host = engine.sheetsHost();
  await expect(host.fill('Run 1', [{ at: 'A2', value: 1 }, { at: 'a2', value: 2 }])).rejects.toThrow("'Run 1'!A2: found two entries for it; expected one");
  await expect(host.fill('Run 1', [{ at: 'first', value: 1 }])).rejects.toThrow('found "first"; expected a cell address');
  await expect(host.fill('Run 1', [{ at: 'A2', value: NaN }])).rejects.toThrow("'Run 1'!A2: found NaN; expected a number");
  await expect(host.fill('Run 1', [{ at: 'A2', value: 'x'.repeat(40_000) }])).rejects.toThrow('found a text of 40000 letters');
  await expect(host.fill('Run 9', [{ at: 'A2', value: 1 }])).rejects.toThrow('There is no sheet “Run 9”');
});

test('on a sheet that is not locked every cell without a formula takes an entry', async () => {
  await engine.sheetsHost().fill('Start', [{ at: 'B1', value: 4 }, { at: 'D7', value: 'new' }]);
  expect(engine.value('Start', 'C1')).toBe(8);
  expect(engine.value('Start', 'D7')).toBe('new');
  await expect(engine.sheetsHost().fill('Start', [{ at: 'C1', value: 4 }])).rejects.toThrow("'Start'!C1: found a formula");
});

test('is one step for undo and redo, however many cells it filled', async () => {
  const before = await cells();
  await engine.sheetsHost().fill('Run 1', [{ at: 'A2', value: 10 }, { at: 'A3', value: 'words' }, { at: 'A4', value: 30 }]);
  const after = await cells();
  await engine.command('univer.command.undo', {});
  expect(await cells()).toEqual(before);
  await engine.command('univer.command.redo', {});
  expect(await cells()).toEqual(after);
});

test('no entries change nothing and take no step', async () => {
  const before = await cells();
  await engine.sheetsHost().fill('Run 1', []);
  expect(await cells()).toEqual(before);
});
