import { CellError, computed, formula } from './bundle';

const READINGS = [
  [0, 0.01], [50, 1.0123456789012345], [100, 2.0123], [0, 0.014],
];

describe('arguments', () => {
  test('a blank cell of a range arrives blank, not as 0', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [50, null], [100, 2.5], [null, null, formula('=PROVE.NET(A1:A4,B1:B4)')]] });
    expect(engine.values('A', 'C4:C7')).toEqual([[0], [''], [2], ['']]);
  });

  test('a cell with a formula that gives "" arrives blank', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [50, formula('=""')], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3)')]] });
    expect(engine.values('A', 'C3:C5')).toEqual([[0], [''], [2]]);
  });

  test('an argument left out, or left empty between commas, takes its default', async () => {
    const engine = await computed({ name: 'A', cells: [
      [0, 0.01, formula('=PROVE.NET(A1:A3,B1:B3)'), formula('=PROVE.NET(A1:A3,B1:B3,)'), formula('=PROVE.NET(A1:A3,B1:B3,"initial")')],
      [50, 1.01], [100, 2.01],
    ] });
    const [plain, empty, said] = ['C1:C3', 'D1:D3', 'E1:E3'].map((range) => engine.values('A', range));
    expect(plain).toEqual([[0], [1], [1.9999999999999998]]);
    expect(empty).toEqual(plain);
    expect(said).toEqual(plain);
  });

  test('an error cell comes out as that error, with the row named', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [50, formula('=1/0')], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3)')]] });
    expect(engine.value('A', 'C3')).toEqual(new CellError('#DIV/0!', 'readings row 2: the cell holds #DIV/0!'));
  });

  test('a text reading gives the worded message', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [50, 'high'], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3)')]] });
    expect(engine.value('A', 'C3')).toEqual(new CellError('#VALUE!', 'readings row 2: found the text "high"; expected a number'));
  });

  test('text that looks like a number stays text', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [50, '1.5'], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3)')]] });
    expect(engine.value('A', 'C3')).toEqual(new CellError('#VALUE!', 'readings row 2: found the text "1.5"; expected a number'));
  });

  test('text in a formula stays text, though it look like a percentage or a date', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [50, 1], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3,"50%")'), formula('=PROVE.NET(A1:A3,B1:B3,"1/2")')]] });
    expect(engine.value('A', 'C3')).toMatchObject({ message: expect.stringContaining('found the text "50%"') });
    expect(engine.value('A', 'D3')).toMatchObject({ message: expect.stringContaining('found the text "1/2"') });
  });

  test('TRUE is no number', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5], [50, true], [100, 2.5, formula('=PROVE.NET(A1:A3,B1:B3)')]] });
    expect(engine.value('A', 'C3')).toEqual(new CellError('#VALUE!', 'readings row 2: found TRUE; expected a number'));
  });

  test('one cell serves as a range and as a value', async () => {
    const engine = await computed({ name: 'A', cells: [[0.02, 2, formula('=PROVE.ZEROBALANCE(A1,B1)')]] });
    expect(engine.value('A', 'C1')).toBe(0.01);
  });

  test('one argument too many is said, not left out', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('=PROVE.ZEROBALANCE(0.02,2,3)')]] });
    expect(engine.value('A', 'A1')).toEqual(new CellError('#VALUE!', 'found 3 arguments; expected at most 2'));
  });
});

describe('numbers in a formula', () => {
  test.each([
    ['=2.50', 2.5], ['=1E-7', 1e-7], ['=-1.50e3', -1500], ['=SUM({0.010;1.50})', 1.51], ['=PROVE.ZEROBALANCE(0.020,2.0)', 0.01],
    ['=SUM({+0.5;-.25})', 0.25],
  ])('%s is read as a number', async (text, value) => {
    const engine = await computed({ name: 'A', cells: [[formula(text)]] });
    expect(engine.value('A', 'A1')).toBe(value);
  });

  test('text in an array keeps its commas', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('={"a,b;c",2.0}')]] });
    expect(engine.values('A', 'A1:B1')).toEqual([['a,b;c', 2]]);
  });

  test('a number past all range is #NUM!', async () => {
    const engine = await computed({ name: 'A', cells: [[formula('=1E999')]] });
    expect(engine.value('A', 'A1')).toMatchObject({ error: '#NUM!' });
  });
});

describe('results', () => {
  test('an array spills with every digit', async () => {
    const engine = await computed({ name: 'A', cells: READINGS.map((row, index) => (index === 0 ? [...row, formula('=PROVE.NET(A1:A4,B1:B4)')] : row)) });
    expect(engine.values('A', 'C1:C4')).toEqual([[0], [1.0123456789012345 - 0.01], [2.0123 - 0.01], [0.014 - 0.01]]);
  });

  test('an array that meets a full cell is #SPILL!', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 1, formula('=PROVE.NET(A1:A2,B1:B2)')], [50, 2, 'taken']] });
    expect(engine.value('A', 'C1')).toMatchObject({ error: '#SPILL!' });
    expect(engine.value('A', 'C2')).toBe('taken');
  });

  test('a formula reads what another has spilled', async () => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5, formula('=PROVE.NET(A1:A3,B1:B3)'), formula('=SUM(C1:C3)')], [50, 1.5], [100, 2.5]] });
    expect(engine.value('A', 'D1')).toBe(3);
  });

  test.each([
    ['=SUM(PROVE.NET(A1:A3,B1:B3))', 3],
    ['=INDEX(PROVE.NET(A1:A3,B1:B3),2,1)', 1],
    ['=IFERROR(PROVE.NET(A1:A3,C1:C3),0)', 0],
    ['=IF(ISERROR(PROVE.NET(A1:A3,C1:C3)),"bad","good")', 'bad'],
    ['=PROVE.SENSITIVITY(A1:A3,PROVE.NET(A1:A3,B1:B3))', 2],
    ['=LET(net,PROVE.NET(A1:A3,B1:B3),MAX(net)-MIN(net))', 2],
    ['=prove.sensitivity(A1:A3,B1:B3)', 2],
  ])('%s computes', async (text, value) => {
    const engine = await computed({ name: 'A', cells: [[0, 0.5, 'x'], [50, 1.5, 'x'], [100, 2.5, 'x', formula(text)]] });
    expect(engine.value('A', 'D3')).toBe(value);
  });

  test('formulas of two sheets refer to each other', async () => {
    const engine = await computed(
      { name: 'Run 1', cells: [[0, 0.5], [50, 1.5], [100, 2.5]] },
      { name: 'Results', cells: [[formula("=PROVE.NET('Run 1'!A1:A3,'Run 1'!B1:B3)")]] },
    );
    expect(engine.values('Results', 'A1:A3')).toEqual([[0], [1], [2]]);
  });

  test('SORT leaves the order of its range to other formulas', async () => {
    const engine = await computed({ name: 'A', cells: [
      [0, 0.5, formula('=SORT(B1:B3,1,-1)'), formula('=PROVE.NET(A1:A3,B1:B3)'), formula('=SORT(B1:B3,1,-1)-B1:B3')], [50, 1.5], [100, 2.5],
    ] });
    expect(engine.values('A', 'C1:E3')).toEqual([[2.5, 0, 2], [1.5, 1, 0], [0.5, 2, -2]]);
  });
});

describe('text that is calculated with', () => {
  test.each(['2,001', '3-4', '1/2', '0,400'])('is no number if it is %s', async (text) => {
    const engine = await computed({ name: 'A', cells: [[text, formula('=A1+1')]] });
    expect(engine.value('A', 'B1')).toMatchObject({ error: '#VALUE!' });
  });

  test.each([['2.5', 3.5], ['1E-3', 1.001], ['5%', 1.05]])('is a number if it is %s', async (text, sum) => {
    const engine = await computed({ name: 'A', cells: [[text, formula('=A1+1')]] });
    expect(engine.value('A', 'B1')).toBeCloseTo(sum, 12);
  });
});
