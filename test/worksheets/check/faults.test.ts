import { checkSheet } from '../../../src/worksheets/check/checkSheet';
import { points, SampleSheet, simulatedSheet, SOUND, TEN_UP, UP_DOWN } from '../sampleSheet';

/** Three runs up and down to 20 kN: forces in A10:A20, readings in B10:D20, net readings in E10:G20. */
const sound = () => simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, UP_DOWN) }], 5);
/** Three runs of ten points to 20 kN, degree 2: rows 10 to 21. */
const tenPoints = (degree = 2) => simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, TEN_UP) }], 5, degree);
/** Two blocks: tension from row 10, compression from row 24. */
const bothWays = () => simulatedSheet(
  [{ ...SOUND, id: 'tension', forces: points(20, UP_DOWN) }, { ...SOUND, id: 'compression', forces: points(-20, UP_DOWN) }], 5,
);

const NET = { B: 'E', C: 'F', D: 'G' } as Record<string, string>;

/** Types a reading, and lets its net reading follow. */
function type(sheet: SampleSheet, at: string, reading: number): SampleSheet {
  const net = Number((reading - sheet.number(`${at[0]}10`)).toFixed(7));
  const isAnchor = at === 'B10';
  return sheet.put(at, reading).put(NET[at[0]] + at.slice(1), net, isAnchor ? { formula: '=PROVE.NET()' } : {});
}

function findings(sheet: SampleSheet) {
  return checkSheet(sheet.read()).map(({ severity, at, message }) => `${severity} ${at} ${message}`);
}

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

describe('forces', () => {
  test('that rise again on the way down are odd', () => {
    const sheet = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, [0, 50, 100, 40, 60, 0]) }], 5);
    expect(findings(sheet)).toEqual(['odd A14 A14 holds 12 kN after 8 kN on the way down; expected forces that rise to the greatest, then fall']);
  });

  test('applied twice in a row are odd', () => {
    const sheet = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, [0, 50, 50, 100, 0]) }], 5);
    expect(findings(sheet)).toEqual(['odd A12 A12 holds 10 kN, as does the row before; expected another force']);
  });

  test('of both directions in one block are wrong', () => {
    const sheet = bothWays();
    expect(findings(sheet.put('A13', -12))).toContain('wrong A13 Tension: A13 holds -12 kN, A11 4 kN; expected one direction in a block');
  });

  test('without a zero first are wrong, and without one at all', () => {
    const late = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, [20, 60, 100, 0]) }], 5);
    expect(findings(late)).toEqual(['wrong A10 A10 holds 4 kN before the first zero; expected a zero before the run, to take net readings from']);
    const never = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, [20, 60, 100]) }], 5);
    expect(findings(never)).toEqual([expect.stringMatching(/^wrong A10 A10 holds 4 kN, and no row is at zero force; expected a zero before the run/)]);
  });

  test('that end on the way down without a zero are odd', () => {
    const sheet = simulatedSheet([{ ...SOUND, id: 'tension', forces: points(20, [0, 20, 60, 100, 60, 20]) }], 5);
    expect(findings(sheet)).toEqual([expect.stringMatching(/^odd A15 the forces end on the way down with 4 kN in A15; expected a zero after the run/)]);
  });

  test('beyond the standard’s capacity are wrong, before a reading is taken too', () => {
    expect(findings(sound().put('I2', 15))).toEqual(['wrong A14 A14 holds 16 kN (and 2 more); expected no more than the standard’s capacity, 15 kN']);
    expect(findings(bothWays().put('I2', 18))).toEqual([expect.stringMatching(/^wrong A15 Tension: A15 holds 20 kN; /), expect.stringMatching(/^wrong A29 Compression: A29 holds -20 kN; /)]);
  });

  test('fed by a simulator are what should be indicated: its capacity counts times the scale', () => {
    const sheet = sound().put('C2', 'mV/V').put('D2', 'kN').put('I2', 2).single('scale', 'K2', 10);
    expect(findings(sheet)).toEqual([]);
    expect(findings(sheet.put('I2', 1.5))).toEqual(['wrong A14 A14 holds 16 kN (and 2 more); expected no more than the standard’s capacity, 15 kN']);
  });

  test('in a named range of another length than the readings are wrong', () => {
    const sheet = sound().unname('forces_tension');
    expect(findings(sheet)).toEqual([expect.stringMatching(/^wrong B10 The readings in B10 have no forces beside them: the name forces_tension is gone/)]);
    sheet.range('forces_tension', 1, 10, [[0], [1]]);
    expect(findings(sheet)).toEqual(['wrong B10 readings_tension, from B10 on, has 11 rows and forces_tension 2; expected as many: were rows inserted or deleted?']);
  });

  test('may be times, which must rise', () => {
    const sheet = new SampleSheet().range('times_loaded', 1, 5, [[0], [1], [10], [5]]).range('readings_loaded', 2, 5, [[2], [2.0001], [2.0002], [2.0002]]);
    expect(findings(sheet)).toEqual(['wrong A8 A8 holds 5 min after 10 min; expected times that rise']);
  });
});

describe('a reading that breaks the order of its run', () => {
  test('is found with what was expected: a digit mistyped', () => {
    const sheet = sound();
    const right = sheet.number('C13');
    type(sheet, 'C13', Number((right - 0.9).toFixed(5)));
    const found = findings(sheet);
    expect(found).toEqual([expect.stringMatching(/^wrong C13 Run 2: C13 holds 0\.3\d+ mV\/V at 12 kN, out of order with C12 at 8 kN; expected about 1\.2\d? mV\/V/)]);
  });

  test('is found where a decimal point slipped, up or down', () => {
    const sheet = sound();
    type(sheet, 'B12', sheet.number('B12') * 10);
    type(sheet, 'D18', sheet.number('D18') / 10);
    expect(findings(sheet).map((line) => line.slice(0, 9))).toEqual(['wrong B12', 'wrong D18']);
  });

  test('looks swapped with its neighbour if each fits the other’s place', () => {
    const sheet = sound();
    const [one, other] = [sheet.number('C13'), sheet.number('C14')];
    type(type(sheet, 'C13', other), 'C14', one);
    expect(findings(sheet)).toEqual([expect.stringMatching(/^wrong C13 Run 2: C13 holds 1\.6\d+ mV\/V and C14 1\.2\d+ mV\/V, .*they look swapped$/)]);
  });

  test('is found where a reading was typed twice', () => {
    const sheet = sound();
    type(sheet, 'C14', sheet.number('C13'));
    expect(findings(sheet)).toEqual([expect.stringMatching(/^wrong C14 Run 2: C14 holds 1\.2\d+ mV\/V at 16 kN, the same as C13 at 12 kN/)]);
  });

  test('is found in compression, and on the way down', () => {
    const sheet = bothWays();
    const [one, other] = [sheet.number('B31'), sheet.number('B32')];
    sheet.put('B31', other).put('B32', one);
    expect(findings(sheet)[0]).toMatch(/^wrong B31 Compression, run 1: B31 holds -0\.7\d+ mV\/V and B32 -1\.1\d+ mV\/V, .*they look swapped$/);
  });
});

describe('a run', () => {
  test('of the other sign than the others is wrong', () => {
    const sheet = sound();
    for (let row = 10; row <= 20; row += 1) type(sheet, `C${row}`, -sheet.number(`C${row}`));
    for (let row = 10; row <= 20; row += 1) type(sheet, `C${row}`, sheet.number(`C${row}`));
    expect(findings(sheet)).toEqual([expect.stringMatching(/^wrong C15 Run 2: the readings fall with the magnitude of the force, to -2\.\d+ mV\/V at 20 kN in C15, while they rise in the other runs/)]);
  });

  test('whose zero does not return is odd, by common practice or by the sheet’s limit', () => {
    const sheet = sound();
    type(sheet, 'D20', Number((sheet.number('D10') + 0.003).toFixed(5)));
    expect(findings(sheet)).toEqual([expect.stringMatching(/^odd D20 Run 3: the zero in D20, .* differs from the zero before the run in D10, .* by 0\.15 % of the output at 20 kN; expected within 0\.1 % \(common practice, no source\)$/)]);
    sheet.single('limit_zero_return', 'F40', 0.002);
    expect(findings(sheet)).toEqual([]);
    sheet.put('F40', 0.0005);
    expect(findings(sheet)[0]).toMatch(/expected within 0\.05 %$/);
  });

  test('that repeats another to the last digit looks copied', () => {
    const sheet = sound();
    for (let row = 10; row <= 20; row += 1) type(sheet, `D${row}`, sheet.number(`B${row}`));
    expect(findings(sheet)).toEqual(['odd D10 Run 3: from D10 on, all 11 readings repeat run 1 to the last digit; expected some scatter: copied?']);
  });
});

describe('an outlier', () => {
  test('is found where the order of the run still holds', () => {
    const sheet = tenPoints();
    type(sheet, 'C15', Number((sheet.number('C15') + 0.01).toFixed(5)));
    const right = tenPoints().number('C15');
    const found = findings(sheet);
    expect(found).toHaveLength(1);
    const match = /^odd C15 Run 2: C15 holds (\S+) mV\/V at 10 kN; expected about (\S+) mV\/V from all the other readings \(t = (\S+), expected within ±(\S+)\)$/.exec(found[0]);
    expect(Number(match?.[2])).toBeCloseTo(right, 3);
    expect(Number(match?.[3])).toBeGreaterThan(Number(match?.[4]));
  });

  test('is found beside another that would hide it', () => {
    const sheet = tenPoints();
    type(sheet, 'C15', Number((sheet.number('C15') + 0.05).toFixed(5)));
    type(sheet, 'B18', Number((sheet.number('B18') - 0.01).toFixed(5)));
    expect(findings(sheet).map((line) => line.slice(0, 7))).toEqual(['odd C15', 'odd B18']);
  });

  test('is found in a single run up and down', () => {
    const sheet = simulatedSheet([{ ...SOUND, id: 'tension', runs: 1, forces: points(20, UP_DOWN), scatter: 1e-5, hysteresis: 2e-5 }], 5);
    const wrong = Number((sheet.number('B13') + 0.1).toFixed(5));
    sheet.put('B13', wrong).put('C13', Number((wrong - sheet.number('B10')).toFixed(7)));
    expect(findings(sheet)).toEqual([expect.stringMatching(/^odd B13 Readings: B13 holds/)]);
  });
});

describe('resolution and degree', () => {
  test('too coarse for class A at the lowest force is odd; for class AA only if the sheet asks for it', () => {
    const sheet = tenPoints().put('B2', 0.0006);
    expect(findings(sheet)).toEqual([expect.stringMatching(/^odd A11 the lowest force, 2 kN in A11, is 33\d resolutions of 0\.006 kN; expected at least 400 for class A \(ASTM E74, from memory\)$/)]);
    sheet.put('B2', 0.0003);
    expect(findings(sheet)).toEqual([]);
    sheet.single('limit_class_aa_from', 'F50', 2);
    expect(findings(sheet)).toEqual([expect.stringMatching(/expected at least 2000 for class AA/)]);
  });

  test('above degree 2 must be finer than 1/50 000', () => {
    expect(findings(tenPoints(3))).toEqual([]);
    expect(findings(tenPoints(3).put('B2', 0.00005))).toEqual([expect.stringMatching(/^wrong J2 J2 holds degree 3, and the resolution in B2 is 1\/400\d\d of the output at 20 kN; expected finer than 1\/50000 above degree 2/)]);
    expect(findings(tenPoints(2).put('B2', 0.00005))).toEqual([]);
  });

  test('that is not stated is missing', () => {
    expect(findings(sound().put('B2', null))).toEqual(['missing B2 The resolution in B2 is empty; expected the least step of the reading, in output units']);
  });
});

describe('what is recorded beside the readings', () => {
  test.each([
    [null, 'missing E2 The temperature in E2 is empty; expected that of the room, in °C'],
    [27.5, 'odd E2 The temperature in E2, 27.5 °C, is off the reference of 23 °C; expected within 3 °C (common practice, no source)'],
    ['warm', 'wrong E2 The temperature: E2 holds the text “warm”; expected a number, in °C'],
  ])('a temperature of %j is found', (value, message) => {
    expect(findings(sound().put('E2', value))).toEqual([message]);
  });

  test('a temperature is held against the sheet’s own reference', () => {
    expect(findings(sound().put('E2', 20).put('F2', 20))).toEqual([]);
  });

  test('a standard that was due is wrong; on its last day it is not', () => {
    expect(findings(sound().put('H2', 45_999))).toEqual(['wrong H2 The standard was due on 2025-12-08 (H2), before the run of 2025-12-09 (G2); expected a standard in calibration']);
    expect(findings(sound().put('H2', 46_000))).toEqual([]);
    expect(findings(sound().put('G2', '2026-05-05').put('H2', '2026-03-01'))[0]).toMatch(/was due on 2026-03-01/);
  });

  test('dates that are not there, or are none, are found', () => {
    expect(findings(sound().put('G2', null).put('H2', '5 May'))).toEqual([
      'wrong H2 The date to which the standard is calibrated: H2 holds the text “5 May”; expected a date, like 2026-11-25',
      'missing G2 The date of the run in G2 is empty',
    ]);
  });
});

describe('results', () => {
  const withResult = () => sound()
    .single('value_nonlinearity_tension', 'D40', 0.0003, { formula: '=PROVE.NONLINEARITY()', format: '0.000%' })
    .single('limit_nonlinearity', 'F40', 0.0005, { format: '0.000%' }).single('verdict_nonlinearity_tension', 'G40', 'within', { formula: '=IF()' });

  test('within their limits give no finding', () => {
    expect(findings(withResult())).toEqual([]);
  });

  test('outside are odd, with value and limit', () => {
    const sheet = withResult().put('D40', 0.00062, { formula: '=PROVE.NONLINEARITY()', format: '0.000%' }).put('G40', 'outside', { formula: '=IF()' });
    expect(findings(sheet)).toEqual(['odd G40 Nonlinearity tension: outside, D40 holds 0.062 %; expected within the limit 0.05 % in F40']);
  });

  test('are called by the label beside them, after their block if there are several', () => {
    const label = (sheet: SampleSheet) => sheet.put('A60', 'Non-linearity, terminal line').single('value_nonlinearity_compression', 'D60', 7);
    expect(findings(label(withResult()))[0]).toMatch(/^wrong D60 Non-linearity, terminal line: D60 holds 7; expected its formula/);
    expect(findings(label(bothWays()))[0]).toMatch(/^wrong D60 Compression: Non-linearity, terminal line: D60/);
  });

  test('outside are called outside without a value too', () => {
    expect(findings(sound().single('verdict_seal', 'C50', 'outside'))).toEqual(['odd C50 Seal: C50 holds “outside”']);
  });

  test('that hold an error are wrong, and odd if no answer exists', () => {
    const failed = (error: string) => findings(withResult().put('D40', { error }, { formula: '=PROVE.NONLINEARITY()' }));
    expect(failed('#VALUE!')).toEqual(['wrong D40 Nonlinearity tension: D40 holds #VALUE!; expected a result. Select the cell to see why']);
    expect(failed('#N/A')).toEqual([expect.stringMatching(/^odd D40 .*no answer exists/)]);
    expect(failed('#NAME?')).toEqual(['wrong D40 D40 holds #NAME?: the functions are not known here; expected the add-in to be loaded']);
  });

  test('that hold an error while readings are missing wait for them', () => {
    const sheet = withResult().put('C14', null).put('D40', { error: '#VALUE!' }, { formula: '=PROVE.NONLINEARITY()' });
    expect(findings(sheet)).toEqual(['missing C14 Run 2: 1 of 11 readings is empty, C14', 'missing D40 One result waits for readings, first in D40']);
  });

  test('overwritten by a constant, or deleted, are wrong', () => {
    expect(findings(withResult().put('D40', 0.0001))).toEqual([expect.stringMatching(/^wrong D40 Nonlinearity tension: D40 holds 0\.0001; expected its formula/)]);
    expect(findings(withResult().put('D40', null))).toEqual([expect.stringMatching(/^wrong D40 Nonlinearity tension: D40 holds nothing; expected its formula/)]);
    expect(findings(sound().put('E10', 0))).toEqual([expect.stringMatching(/^wrong E10 net readings: E10 holds 0; expected its formula/)]);
  });

  test('empty by their formula are no finding', () => {
    expect(findings(withResult().put('D40', null, { formula: '=IF(TRUE,"","")' }))).toEqual([]);
    expect(findings(withResult().put('D40', '', { formula: '=IF(TRUE,"","")' }))).toEqual([]);
  });

  test('that cannot spill name the cell in the way', () => {
    const sheet = sound().put('E10', { error: '#SPILL!' }, { formula: '=PROVE.NET()' });
    for (let row = 10; row <= 20; row += 1) [...'EFG'].forEach((column) => column + row !== 'E10' && sheet.put(`${column}${row}`, null));
    sheet.put('F12', 'note');
    expect(findings(sheet)).toEqual(['wrong F12 E10 holds #SPILL!: F12 holds the text “note” where its net readings belong; expected those cells empty']);
  });

  test('errors beyond tolerance are odd', () => {
    const sheet = sound();
    sheet.range('errors_tension', 10, 10, Array.from({ length: 11 }, (_, i) => [i === 4 ? 0.05 : 0.001])).range('tolerances_tension', 11, 10, Array.from({ length: 11 }, () => [0.02]));
    expect(findings(sheet)).toEqual(['odd J14 the error in J14, 0.05 kN at 16 kN, is beyond its tolerance; expected within ±0.02 kN']);
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
