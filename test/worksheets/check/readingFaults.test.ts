import { points, simulatedSheet, SOUND, UP_DOWN } from '../sampleSheet';
import { bothWays, findings, sound, tenPoints, type } from './faultySheet';

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
