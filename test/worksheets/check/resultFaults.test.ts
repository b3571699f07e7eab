import type { SampleSheet } from '../sampleSheet';
import { bothWays, findings, sound, tenPoints } from './faultySheet';

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
