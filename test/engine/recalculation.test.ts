import { CellError, computed, formula } from './bundle';

const run = (reading: number | string): (number | string | { formula: string })[][] => [
  [0, 0.5], [50, reading], [100, 2.5, formula('=PROVE.SENSITIVITY(A1:A3,B1:B3)'), formula('=PROVE.NET(A1:A3,B1:B3)')],
];

describe('recalculation', () => {
  test('an edit recomputes what depends on it, spilled cells included', async () => {
    const engine = await computed({ name: 'A', cells: run(1.5) });
    await engine.set('A', 'B3', 4.5);
    expect(engine.value('A', 'C3')).toBe(4);
    expect(engine.values('A', 'D3:D5')).toEqual([[0], [1], [4]]);
  });

  test('a range that grows spills further, and one that shrinks leaves no remains', async () => {
    const engine = await computed({ name: 'A', cells: run(1.5) });
    await engine.set('A', 'D3', formula('=PROVE.NET(A1:A2,B1:B2)'));
    expect(engine.values('A', 'D3:D5')).toEqual([[0], [1], [null]]);
    await engine.set('A', 'D3', formula('=PROVE.NET(A1:A3,B1:B3)'));
    expect(engine.values('A', 'D3:D5')).toEqual([[0], [1], [2]]);
  });

  test('a formula entered later is computed', async () => {
    const engine = await computed({ name: 'A', cells: run(1.5) });
    await engine.set('A', 'F1', formula('=PROVE.ZEROBALANCE(0.5,C3)'));
    expect(engine.value('A', 'F1')).toBe(0.25);
  });

  test('a function that fails leaves every other formula computed', async () => {
    const engine = await computed({ name: 'A', cells: [...run('high'), [formula('=1+1'), formula('=PROVE.ZEROBALANCE(0.02,2)')]] });
    expect(engine.value('A', 'C3')).toBeInstanceOf(CellError);
    expect(engine.values('A', 'A4:B4')).toEqual([[2, 0.01]]);
  });

  test('a formula evaluated beside the sheet sees its cells, spilled ones included', async () => {
    const engine = await computed({ name: 'A', cells: run(1.5) });
    expect(await engine.evaluate('A', '=SUM(D3:D5)')).toBe(3);
  });

  test.each([
    ['=SUM(B1:B3)', 4.5, 7.5], ['=SUM(--(B1:B3>2))', 1, 2], ['=COUNTIF(B1:B3,">2")', 1, 2], ['=SUM(--(B1:B3=4.5))', 0, 1],
  ])('a cell with %s is up to date after an edit, though the same was evaluated beside the sheet before', async (text, before, after) => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5, formula(text)], [0, 1.5], [0, 2.5]] });
    expect(await engine.evaluate('A', text)).toBe(before);
    await engine.set('A', 'B2', 4.5);
    expect(engine.value('A', 'C1')).toBe(after);
  });

  test('two engines do not share formulas', async () => {
    const first = await computed({ name: 'A', cells: run(1.5) });
    const second = await computed({ name: 'A', cells: run('high') });
    expect(first.value('A', 'C3')).toBe(2);
    expect(second.value('A', 'D3')).toBeInstanceOf(CellError);
    await first.set('A', 'B3', 4.5);
    expect(first.value('A', 'C3')).toBe(4);
  });
});
