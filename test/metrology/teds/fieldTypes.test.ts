/** Each kind of field alone: its range, its steps, and what it refuses. */
import fc from 'fast-check';
import { BASIC_FIELDS } from '../../../src/metrology/teds/basic';
import { calendarDate } from '../../../src/metrology/teds/calendarDate';
import { choice } from '../../../src/metrology/teds/choice';
import { letters } from '../../../src/metrology/teds/letters';
import { constantRatio, constantStep } from '../../../src/metrology/teds/quantised';
import { single } from '../../../src/metrology/teds/single';
import { wholeNumber } from '../../../src/metrology/teds/wholeNumber';
import { tedsDump } from '../../published';

describe('whole numbers', () => {
  test.each(Object.entries(tedsDump.ranges_of_basic_teds as Record<string, [number, number]>))('%s has the range of public tutorials on IEEE 1451.4', (name, [least, greatest]) => {
    const { type } = BASIC_FIELDS.find((field) => field.name === name)!;
    expect([least - 1, least, greatest, greatest + 1].map((value) => type.encode(value))).toEqual([undefined, least, greatest, undefined]);
    expect([least, greatest].map((code) => type.decode(code))).toEqual([least, greatest]);
  });
  test('fractions, text and codes outside the range are none', () => {
    const field = wholeNumber(6, 2, 50);
    expect([2.5, '3', ''].map((value) => field.encode(value))).toEqual([undefined, undefined, undefined]);
    expect([1, 51].map((code) => field.decode(code))).toEqual([undefined, undefined]);
  });
});

describe('letters', () => {
  const initials = letters(3, '_');
  test('A is 1, Z is 26, a blank is 0, the first letter in the lowest bits', () => {
    expect(initials.encode('AZ')).toBe(1 + 26 * 32);
    expect(initials.encode(' B')).toBe(2 * 32);
    expect(initials.encode('')).toBe(0);
    expect([1 + 26 * 32, 2 * 32, 0].map((code) => initials.decode(code))).toEqual(['AZ', ' B', '']);
  });
  test('small letters are kept as capitals; others, digits and a letter too many are refused', () => {
    expect(initials.encode('jqp')).toBe(initials.encode('JQP'));
    expect(['J0', 'ABCD', 'ß', 'Ä', 'ı', '`', '{', 7].map((value) => initials.encode(value))).toEqual(Array(8).fill(undefined));
  });
  test('a version letter ends at Z, initials at code 31', () => {
    expect([26, 27, 31].map((code) => letters(1, 'Z').decode(code))).toEqual(['Z', undefined, undefined]);
    expect(initials.decode(31 + 27 * 32)).toBe('_[');
    expect(initials.encode('_[')).toBe(31 + 27 * 32);
  });
});

describe('words', () => {
  test('the place in the list is the code, in any case; others are refused', () => {
    const bridge = choice(2, ['quarter', 'half', 'full']);
    expect(['quarter', 'HALF', ' full ', 'none', 2].map((value) => bridge.encode(value))).toEqual([0, 1, 2, undefined, undefined]);
    expect([0, 1, 2, 3].map((code) => bridge.decode(code))).toEqual(['quarter', 'half', 'full', undefined]);
  });
});

describe('constant resolution', () => {
  const excitation = constantStep(9, 0.1, 0.1);
  test('value = start + step·code: the published dump has 390 for 40 ohm, 24 for 2.5 V, 9 for 1 V, 59 for 6 V', () => {
    expect(constantStep(18, 1, 0.1).decode(390)).toBe(40);
    expect(constantStep(18, 1, 0.1).encode(40)).toBe(390);
    expect([24, 9, 59].map((code) => excitation.decode(code))).toEqual([2.5, 1, 6]);
    expect([2.5, 1, 6].map((value) => excitation.encode(value))).toEqual([24, 9, 59]);
  });
  test('the nearest step is kept, so no value moves by more than half a step (property)', () => {
    fc.assert(fc.property(fc.double({ min: 0.1, max: 51.1, noNaN: true }), (value) => {
      expect(Math.abs((excitation.decode(excitation.encode(value)!) as number) - value)).toBeLessThanOrEqual(0.05 + 1e-9);
    }));
  });
  test('below the start and above the last step nothing is taken, however near', () => {
    expect([0.0999, 51.1001, -2.5, 0].map((value) => excitation.encode(value))).toEqual(Array(4).fill(undefined));
    expect([0.1, 51.1].map((value) => excitation.encode(value))).toEqual([0, 510]);
  });
  test('all ones mean that no value is stated (from memory)', () => {
    expect(excitation.decode(511)).toBe('not stated');
    expect(excitation.encode('Not stated')).toBe(511);
  });
});

describe('constant relative resolution', () => {
  const response = constantRatio(6, 1e-6, 0.146);
  test('value = start·(1 + 2·tolerance)^code: the published dump has 0 for 1E-6 s', () => {
    expect(response.decode(0)).toBe(1e-6);
    expect(response.encode(1e-6)).toBe(0);
    expect(response.decode(1)).toBeCloseTo(1.292e-6, 15);
  });
  test('ranges printed in public excerpts of other templates come out: 0.005 to 13k at 3 %, 5E-7 to 172 at 0.015 %', () => {
    expect(Math.round((constantRatio(8, 0.005, 0.03).decode(254) as number) / 1000)).toBe(13);
    expect(Math.round(constantRatio(16, 5e-7, 0.00015).decode(65_534) as number)).toBe(172);
  });
  test('response times end at 7.9 s (from memory)', () => {
    expect(response.decode(62)).toBeCloseTo(7.9, 1);
    expect([9.9e-7, 8, 0, -1].map((value) => response.encode(value))).toEqual(Array(4).fill(undefined));
  });
  test('the code nearest by ratio is kept (property)', () => {
    fc.assert(fc.property(fc.double({ min: Math.log(1e-6), max: Math.log(7.9), noNaN: true }), (logarithm) => {
      const value = Math.exp(logarithm);
      const kept = response.decode(response.encode(value)!) as number;
      expect(Math.max(kept / value, value / kept)).toBeLessThanOrEqual(Math.sqrt(1.292) * (1 + 1e-6));
    }));
  });
});

describe('single precision', () => {
  test('codes are those of IEEE 754', () => {
    expect([0, 1, -2, 0.1, 3.4028234663852886e38].map((value) => single.encode(value))).toEqual([0, 0x3f800000, 0xc0000000, 0x3dcccccd, 0x7f7fffff]);
  });
  test('is given back with the fewest digits that are kept as the same single', () => {
    expect([0x3dcccccd, 0x3b03126f, 0x7f7fffff].map((code) => single.decode(code))).toEqual([0.1, 0.002, 3.4028235e38]);
  });
  test('a value moves by no more than 6E-8 of itself (property)', () => {
    fc.assert(fc.property(fc.double({ min: 1.2e-38, max: 3.4e38, noNaN: true }), fc.boolean(), (magnitude, negative) => {
      const value = negative ? -magnitude : magnitude;
      expect(Math.abs((single.decode(single.encode(value)!) as number) - value)).toBeLessThanOrEqual(1.2e-7 * magnitude);
    }));
  });
  test('too great a number, one so small that digits would be cut, and text are refused', () => {
    expect([3.5e38, -1e300, 1e-50, 2e-45, '1', ''].map((value) => single.encode(value))).toEqual(Array(6).fill(undefined));
  });
  test('infinite codes and codes of no number stand for none, except all ones: not stated (from memory)', () => {
    expect([0x7f800000, 0xff800000, 0x7fc00000, 0xffffffff].map((code) => single.decode(code))).toEqual([undefined, undefined, undefined, 'not stated']);
  });
  test('minus zero is read as 0, as a cell would show it', () => {
    expect(Object.is(single.decode(0x80000000), 0)).toBe(true);
    expect(single.encode(-0)).toBe(0);
  });
  test('every other code comes back from the value it stands for (property)', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 0xffffffff }), (code) => {
      const value = single.decode(code);
      if (value !== undefined && code !== 0x80000000) expect(single.encode(value)).toBe(code);
    }), { numRuns: 5000, examples: [[0], [1], [0x007fffff], [0x00800000], [0x80000001], [0x7f7fffff], [0xffffffff]] });
  });
});

describe('dates', () => {
  test('days since 1998-01-01: the code 37254 of the published dump is 2099-12-31', () => {
    // By hand: 102 years with 25 leap days (2000 to 2096), less the last day: 102·365 + 25 − 1 = 37254.
    expect(calendarDate.decode(37_254)).toBe('2099-12-31');
    expect(calendarDate.encode('2099-12-31')).toBe(37_254);
    expect(calendarDate.encode('1998-01-01')).toBe(0);
  });
  test('a spreadsheet date is its serial number: 35796 is 1998-01-01, 46351 is 2026-11-25', () => {
    expect([35_796, 46_351].map((serial) => calendarDate.decode(calendarDate.encode(serial)!))).toEqual(['1998-01-01', '2026-11-25']);
  });
  test('days before and behind the range, times of day and dates that no calendar has are refused', () => {
    const refused = [35_795, 35_796 + 65_535, 46_351.5, '1997-12-31', '2177-06-06', '2026-02-30', '2025-02-29', '25.11.2026', '2026-11-25T12:00', '', 'today'];
    expect(refused.map((value) => calendarDate.encode(value))).toEqual(refused.map(() => undefined));
  });
  test('all ones mean that no date is stated (from memory)', () => {
    expect(calendarDate.decode(65_535)).toBe('not stated');
    expect(calendarDate.encode('not stated')).toBe(65_535);
    expect(calendarDate.decode(65_534)).toBe('2177-06-05');
  });
  test('every code comes back from its date', () => {
    for (let code = 0; code <= 65_535; code += 1) if (calendarDate.encode(calendarDate.decode(code)!) !== code) throw new Error(`code ${code}`);
  });
});
