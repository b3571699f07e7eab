import { points, SampleSheet, simulatedSheet, SOUND } from '../sampleSheet';
import { bothWays, findings, sound } from './faultySheet';

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
