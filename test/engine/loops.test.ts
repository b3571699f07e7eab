import { CellError, computed, formula } from './bundle';

const cycle = (message: string): InstanceType<typeof CellError> => new CellError('#CYCLE!', message);

describe('a circular reference', () => {
  test('of a cell to itself is an error', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('=A1+1')]] });
    expect(engine.value('A', 'A1')).toEqual(cycle('the formula refers to its own cell'));
  });

  test('within a range is an error', async () => {
    const engine = await computed({ name: 'A', cells: [[1], [2], [formula('=SUM(A1:A3)')]] });
    expect(engine.value('A', 'A3')).toEqual(cycle('the formula refers to its own cell'));
  });

  test('over several cells is an error in each that names the others, and passed on by what reads them', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('=A2'), formula('=A1*2')], [formula('=A3+1')], [formula('=A1+1')], [formula('=1+1')]] });
    expect(engine.values('A', 'A1:A4')).toEqual([
      [cycle('the formula refers back to its own cell, by way of A2, A3')],
      [cycle('the formula refers back to its own cell, by way of A3, A1')],
      [cycle('the formula refers back to its own cell, by way of A1, A2')],
      [2],
    ]);
    expect(engine.value('A', 'B1')).toEqual(cycle('the formula refers to a cell that refers back to itself'));
  });

  test('over sheets names the sheet', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('=B!A1')]] }, { name: 'B', cells: [[formula('=A!A1')]] });
    expect(engine.value('A', 'A1')).toEqual(cycle('the formula refers back to its own cell, by way of B!A1'));
  });

  test('through a cell function is an error', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [100, formula('=D1+1'), null, null], [null, null, null, null]] });
    await engine.set('A', 'D1', formula('=PROVE.SENSITIVITY(A1:A2,B1:B2)'));
    expect(engine.value('A', 'D1')).toEqual(cycle('the formula refers back to its own cell, by way of B2'));
    expect(engine.value('A', 'B2')).toEqual(cycle('the formula refers back to its own cell, by way of D1'));
  });

  test('that is broken gives values again, and none that is not one is an error', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('=A2+A3'), formula('=A1+A2+A3')], [formula('=A3+1')], [formula('=A1+1')]] });
    expect(engine.value('A', 'A1')).toMatchObject({ error: '#CYCLE!' });
    await engine.set('A', 'A3', 5);
    expect(engine.values('A', 'A1:B3')).toEqual([[11, 22], [6, null], [5, null]]);
  });

  test('made by an edit is an error', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('=A2')], [5]] });
    await engine.set('A', 'A2', formula('=A1+1'));
    expect(engine.values('A', 'A1:A2')).toMatchObject([[{ error: '#CYCLE!' }], [{ error: '#CYCLE!' }]]);
  });

  test('of a thousand cells is found', async () => {
    const cells = Array.from({ length: 1000 }, (_, row) => [formula(`=A${((row + 1) % 1000) + 1}+1`)]);
    const engine = await computed({ name: 'A', cells });
    expect(engine.value('A', 'A500')).toEqual(cycle('the formula refers back to its own cell, by way of A501, A502, A503, A504, A505 and more'));
  });
});
