import { checkSheet } from '../../../src/worksheets/check/checkSheet';
import type { SampleSheet } from '../sampleSheet';
import { bothWays, findings, sound, tenPoints, type } from './faultySheet';

test('the sound sheets that the faults are put into give no findings', () => {
  expect([sound(), tenPoints(), bothWays()].flatMap(findings)).toEqual([]);
});

describe('missing readings', () => {
  test('of one run make one finding, with the first empty cell', () => {
    const sheet = ['C14', 'C15', 'C16', 'C20'].reduce((one, at) => one.put(at, null), sound());
    expect(findings(sheet)).toEqual(['missing C14 Run 2: 4 of 11 readings are empty, first at C14']);
  });

  test('name the one cell that is empty, and their block if there are several', () => {
    expect(findings(bothWays().put('D30', null))).toEqual(['missing D30 Compression, run 3: 1 of 11 readings is empty, D30']);
  });

  test('that the sheet says it does not need are not missed', () => {
    const needing = (readings: number) => findings(sound().put('C14', null).single('needed_tension', 'M30', readings));
    expect(needing(33)).toEqual(['missing C14 Run 2: 1 of 11 readings is empty, C14']);
    expect(needing(32)).toEqual([]);
  });

  test('say that the zero before the run is needed', () => {
    expect(findings(sound().put('C10', null).put('F10', null))[0]).toMatch(/^missing C10 Run 2: 1 of 11 readings is empty, C10; this is the zero before the run/);
  });

  test('of a whole run, of a whole block and of the whole sheet are said once', () => {
    const clear = (sheet: SampleSheet, columns: string, rows: number[]) => rows.forEach((row) => [...columns].forEach((column) => sheet.put(`${column}${row}`, null)));
    const rows = Array.from({ length: 11 }, (_, i) => 10 + i);
    const sheet = bothWays();
    clear(sheet, 'D', rows);
    expect(findings(sheet)).toEqual(['missing D10 Tension, run 3: all 11 readings are empty, from D10 on']);
    clear(sheet, 'BC', rows);
    expect(findings(sheet)).toEqual(['missing B10 Tension: no readings yet, the first belongs in B10']);
    clear(sheet, 'BCD', rows.map((row) => row + 14));
    sheet.put('E2', null).put('G2', null);
    expect(findings(sheet)).toEqual(['missing B10 No readings yet: the first belongs in B10']);
  });

  test('are told from a blank that a formula gives', () => {
    expect(findings(sound().put('C14', '', { formula: '=IF(Z1="","",Z1)' }))).toEqual(['missing C14 Run 2: 1 of 11 readings is empty, C14']);
  });
});

describe('what is no number', () => {
  test.each([
    ['0,8123', /B13 holds the text “0,8123”, which looks like a number but is text: type it again/],
    ['1.2O', /B13 holds the text “1\.2O”; expected a number/],
    [true, /B13 holds TRUE; expected a number/],
    [{ error: '#REF!' }, /B13 holds the error #REF!; expected a number/],
  ])('in a reading is wrong: %j', (value, message) => {
    const found = findings(sound().put('B13', value));
    expect(found).toEqual([expect.stringMatching(message)]);
    expect(found[0]).toMatch(/^wrong B13 Run 1: /);
  });

  test('is counted after five', () => {
    const sheet = sound();
    for (let row = 11; row < 20; row += 1) sheet.put(`B${row}`, 'x');
    const found = findings(sheet);
    expect(found).toHaveLength(6);
    expect(found[5]).toBe('wrong B16 4 more readings that are no numbers, from B16 on');
  });

  test('in the forces is wrong', () => {
    expect(findings(sound().put('A13', 'abc'))).toContain('wrong A13 A13 holds the text “abc”; expected the applied force');
    expect(findings(sound().put('A13', null))).toContain('wrong A13 A13 holds nothing; expected the applied force');
  });
});

describe('a list of findings', () => {
  test('has the gravest first, and rows from top to bottom', () => {
    const sheet = sound().put('E2', null).put('H2', 45_000).put('I2', 15).put('D12', null);
    type(sheet, 'B20', Number((sheet.number('B10') + 0.01).toFixed(5)));
    expect(findings(sheet).map((line) => line.split(' ').slice(0, 2).join(' '))).toEqual(['wrong H2', 'wrong A14', 'odd B20', 'missing E2', 'missing D12']);
  });

  test('of a sheet that no template made says so', () => {
    expect(checkSheet({ name: 'Notes', cells: [{ at: 'A1', value: 5 }], names: [] })).toEqual([expect.objectContaining({ severity: 'missing', at: 'A1' })]);
  });

  test('ignores names that are no range of the sheet', () => {
    const { names, ...sheet } = sound().read();
    const strange = ['#REF!', 'A:A', 'Other!A1', '', 'A1:XFD1048576', 'ZZZZ1', 'B0'].map((range, i) => ({ name: `readings_x${i}`, range }));
    expect(checkSheet({ ...sheet, names: [...names, ...strange] })).toEqual([]);
  });
});
