import { computed, type Engine, formula, messageAt } from './bundle';

const TEXT_MESSAGE = 'readings row 2: found the text "high"; expected a number';
const bad = [[0, 0.5], [50, 'high'], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3)')]];

function at(engine: Engine, sheet: string, row: number, column: number): string | undefined {
  return messageAt(engine.unitId, engine.sheet(sheet).getSheetId(), row, column);
}

describe('messages of errors', () => {
  test('are found by the cell of the formula', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    expect(at(engine, 'A', 2, 2)).toBe(TEXT_MESSAGE);
    expect(at(engine, 'A', 2, 3)).toBeUndefined();
  });

  test('are kept apart by sheet', async () => {
    const engine = await computed({ name: 'A', cells: bad }, { name: 'B', cells: [[0, 'low'], [50, 1], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3)')]] });
    expect(at(engine, 'A', 2, 2)).toBe(TEXT_MESSAGE);
    expect(at(engine, 'B', 2, 2)).toBe('readings row 1: found the text "low"; expected a number');
  });

  test('are dropped when the input is mended', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    await engine.set('A', 'B2', 1.5);
    expect(engine.values('A', 'C3:C5')).toEqual([[0], [1], [2]]);
    expect(at(engine, 'A', 2, 2)).toBeUndefined();
    expect(engine.messages.size).toBe(0);
  });

  test('are dropped when the formula is cleared', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    await engine.set('A', 'C3', null);
    expect(at(engine, 'A', 2, 2)).toBeUndefined();
  });

  test('are dropped when another formula with the same error takes the place', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    await engine.set('A', 'C3', formula('="text"+1'));
    expect(engine.value('A', 'C3')).toMatchObject({ error: '#VALUE!' });
    expect(at(engine, 'A', 2, 2)).toBeUndefined();
  });

  test('are not taken for those of a formula that was just put over the error', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    const cell = engine.sheet('A').getCellMatrix().getValue(2, 2);
    Object.assign(cell ?? {}, { f: '="text"+1' });
    expect(cell?.v).toBe('#VALUE!');
    expect(at(engine, 'A', 2, 2)).toBeUndefined();
  });

  test('say why the formula fails now, not why it failed before', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    await engine.set('A', 'B2', true);
    expect(at(engine, 'A', 2, 2)).toBe('readings row 2: found TRUE; expected a number');
  });

  test('survive the calls that pass on the error, and are not shown where it is caught', async () => {
    const engine = await computed({ name: 'A', cells: [
      [0, 0.5], [50, 'high'],
      [100, 2.5, formula('=SUM(PROVE.NET(A1:A3,B1:B3))'), formula('=IFERROR(PROVE.NET(A1:A3,B1:B3),0)'), formula('=PROVE.NET(A1:A3,B1:B3)+PROVE.ZEROBALANCE(1,2)')],
    ] });
    expect(at(engine, 'A', 2, 2)).toBe(TEXT_MESSAGE);
    expect(at(engine, 'A', 2, 3)).toBeUndefined();
    expect(at(engine, 'A', 2, 4)).toBe(TEXT_MESSAGE);
  });

  test('of a function within another come with what the inner one said', async () => {
    const engine = await computed({ name: 'A', cells: [...bad.slice(0, 2), [100, 2.5, formula('=PROVE.RESPONSE(PROVE.FIT(A1:A3,B1:B3,1),50)')]] });
    expect(at(engine, 'A', 2, 2)).toBe(`coefficients: the cell holds #VALUE! (${TEXT_MESSAGE})`);
  });

  test('move with their cell when a row is inserted above', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    await engine.command('sheet.command.insert-row', {
      unitId: engine.unitId, subUnitId: engine.sheet('A').getSheetId(), direction: 0,
      range: { startRow: 0, endRow: 0, startColumn: 0, endColumn: 10 },
    });
    expect(engine.value('A', 'C4')).toMatchObject({ error: '#VALUE!' });
    expect(at(engine, 'A', 3, 2)).toBe(TEXT_MESSAGE);
    expect(at(engine, 'A', 2, 2)).toBeUndefined();
  });

  test('do not pile up over many edits', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    for (let row = 1; row <= 8; row += 1) {
      await engine.set('A', `E${row}`, formula('=PROVE.NET(A1:A3,B1:B3)'));
      await engine.set('A', `E${row}`, null);
    }
    expect(engine.messages.size).toBeLessThanOrEqual(2);
  });

  test('are gone with the engine', async () => {
    const engine = await computed({ name: 'A', cells: bad });
    const sheetId = engine.sheet('A').getSheetId();
    engine.messages.dispose();
    expect(messageAt(engine.unitId, sheetId, 2, 2)).toBeUndefined();
  });
});
