import fc from 'fast-check';
import { callFunction } from '../../src/functions/call';
import type { Cell } from '../../src/functions/cells';
import { tedsDump } from '../published';
import { column, fault, table } from './call';

const HEX: string = tedsDump.data_hex_without_checksums;
const text = (id: string, ...args: any[]): string => String(callFunction(id, args));
const decoded = (hex: string) => table('TEDSDECODE', [[hex]], false);

/** A force transducer, every field filled in. */
const filled: readonly (readonly [string, Cell])[] = [
  ['ManufacturerID', 31], ['ModelNumber', 393], ['VersionLetter', 'C'], ['VersionNumber', 7], ['SerialNumber', 104_233], ['PhysicalMeasurand', 'N'],
  ['MinPhysVal', 0], ['MaxPhysVal', 50_000], ['MinElecVal', 0], ['MaxElecVal', 0.002_001_3], ['BridgeType', 'full'], ['SensorImped', 351.3],
  ['RespTime', 0.001], ['ExciteAmplNom', 10], ['ExciteAmplMin', 1], ['ExciteAmplMax', 12], ['CalDate', '2026-11-25'], ['CalInitials', 'JQP'],
  ['CalPeriod', 365], ['MeasID', 12],
];
const rows = (changes: Record<string, Cell> = {}): Cell[][] => filled.map(([name, value]) => [name, name in changes ? changes[name] : value]);
const rowOf = (name: string) => filled.findIndex(([field]) => field === name) + 1;

describe('the published dump', () => {
  const shown = Object.fromEntries(decoded(HEX).map(([name, value]) => [name, value]));
  test.each(Object.entries(tedsDump.published_decode))('%s reads as published', (name, value) => {
    expect(shown[name]).toBe(value);
  });
  test('its codes for bridge type and date read as half bridge and 2099-12-31, its measurand 7 as m/s2', () => {
    expect([shown.BridgeType, shown.CalDate, shown.PhysicalMeasurand]).toEqual(['half', '2099-12-31', 'm/s2']);
  });
  test('is what its decoded table gives again, header row and units included', () => {
    expect(text('TEDSENCODE', table('TEDSDECODE', [[HEX]]))).toBe(HEX);
  });
  test('reads the same with the zeros that fill the memory behind it', () => {
    expect(decoded(HEX.padEnd(256, '0'))).toEqual(decoded(HEX));
  });
  test('becomes the published pages, and is read back from them', () => {
    expect(table('TEDSPAGES', [[HEX]])).toEqual(column(...tedsDump.raw_pages_with_checksum));
    expect(decoded(text('TEDSDATA', column(...tedsDump.raw_pages_with_checksum)))).toEqual(decoded(HEX));
  });
});

describe('round trips', () => {
  /** Codes a field may hold, as the published layout and ranges have it; the codes that stand for nothing are left out. */
  const codes: Record<string, fc.Arbitrary<number>> = {
    ManufacturerID: fc.integer({ min: 17, max: 16_381 }),
    VersionLetter: fc.integer({ min: 0, max: 26 }),
    PhysicalMeasurand: fc.integer({ min: 0, max: 45 }),
    BridgeType: fc.integer({ min: 0, max: 2 }),
    ...Object.fromEntries(['MinPhysVal', 'MaxPhysVal', 'MinElecVal', 'MaxElecVal'].map((name) => [
      name, fc.integer({ min: 0, max: 0xffffffff }).filter((code) => code !== 0x80000000 && Math.floor(code / 2 ** 23) % 256 !== 255),
    ])),
    ...Object.fromEntries(['Selector', 'TemplateID', 'FullScaleElecPrecision', 'Selector_end', 'ExtendedEndSelector'].map((name) => [
      name, fc.constant(tedsDump.layout.find(({ field }: any) => field === name).code),
    ])),
  };
  /** Bits written out as text, lowest first, then cut into bytes: slow, and unlike the code under test. */
  const hexOf = (values: readonly number[]): string => {
    const bits = tedsDump.layout.map(({ bits: width }: any, i: number) => [...values[i].toString(2).padStart(width, '0')].reverse().join('')).join('');
    return bits.match(/.{8}/g)!.map((byte: string) => parseInt([...byte].reverse().join(''), 2).toString(16).padStart(2, '0')).join('').toUpperCase();
  };
  const memory = fc.tuple(...tedsDump.layout.map(({ field, bits }: any) => codes[field] ?? fc.integer({ min: 0, max: 2 ** bits - 1 }))).map((values) => hexOf(values as number[]));

  test('the reference writes the published codes as the published hex', () => {
    expect(hexOf(tedsDump.layout.map(({ code }: any) => code))).toBe(HEX);
  });
  test('every legal memory comes back from its table (property)', () => {
    fc.assert(fc.property(memory, (hex) => {
      expect(text('TEDSENCODE', decoded(hex))).toBe(hex);
    }), { numRuns: 1000 });
  });

  const letter = fc.constantFrom(...'ABCDEFGHIJKLMNOPQRSTUVWXYZ');
  const float = fc.float({ noNaN: true, noDefaultInfinity: true, min: Math.fround(1e-30) }).map((value) => Number(value.toPrecision(6)));
  const tenths = (least: number, last: number) => fc.integer({ min: 0, max: last }).map((code) => (least * 10 + code) / 10);
  const date = fc.integer({ min: 0, max: 65_534 }).map((days) => new Date(Date.UTC(1998, 0, 1 + days)).toISOString().slice(0, 10));
  /** Values on the grid of each field, in the order of `filled`. */
  const values = fc.tuple(
    fc.integer({ min: 17, max: 16_381 }), fc.integer({ min: 0, max: 32_767 }), fc.oneof(letter, fc.constant('')), fc.integer({ min: 0, max: 63 }),
    fc.integer({ min: 0, max: 16_777_215 }), fc.constantFrom<string>(...tedsDump.measurands), float, float, float, float,
    fc.constantFrom('quarter', 'half', 'full'), tenths(1, 262_142), fc.constant(1e-6), tenths(0.1, 510), tenths(0.1, 510), tenths(0.1, 510),
    date, fc.array(letter, { maxLength: 3 }).map((list) => list.join('')), fc.integer({ min: 0, max: 4_095 }), fc.integer({ min: 0, max: 2_047 }),
  );
  test('every legal table comes back from its hex, whatever the order of its rows (property)', () => {
    fc.assert(fc.property(values, fc.infiniteStream(fc.nat()), (list, order) => {
      const fields = filled.map(([name], i): [string, Cell] => [name, list[i]]);
      const shuffled = fields.map((row) => ({ row, key: order.next().value })).sort((a, b) => a.key - b.key).map(({ row }) => row);
      expect(decoded(text('TEDSENCODE', shuffled)).map(([name, value]) => [name, value])).toEqual(fields);
    }), { numRuns: 1000 });
  });
});

describe('what TEDSENCODE refuses', () => {
  const whole = (least: number, greatest: number): Cell[] => [least - 1, greatest + 1, (least + greatest) / 2 + 0.25, -1, String(least), true, null, '', NaN, Infinity];
  const single: Cell[] = [3.5e38, -3.5e38, 1e-50, '1', '0.002', true, null, ''];
  const outside: Record<string, Cell[]> = {
    ManufacturerID: whole(17, 16_381), ModelNumber: whole(0, 32_767), VersionLetter: ['AB', '1', 'é', 3, false], VersionNumber: whole(0, 63),
    SerialNumber: whole(0, 16_777_215), PhysicalMeasurand: ['kN', 'mV/V', 4, null], MinPhysVal: single, MaxPhysVal: single, MinElecVal: single,
    MaxElecVal: single, BridgeType: ['whole', 2, null], SensorImped: [0.9, 0, -350, 26_215.4, '350', null], RespTime: [9e-7, 0, -1, 8, '1 ms', null],
    ExciteAmplNom: [0, 51.2, '10', null], ExciteAmplMin: [0.04, 52, null], ExciteAmplMax: [-5, 51.11, null],
    CalDate: ['1997-12-31', '2177-06-06', '25.11.2026', 35_795, 46_351.5, '2026-02-30', true, null], CalInitials: ['JQPX', 'J1', 7], CalPeriod: whole(0, 4_095), MeasID: whole(0, 2_047),
  };
  const cases = filled.flatMap(([name]) => outside[name].map((value): [string, Cell] => [name, value]));
  test.each(cases)('%s = %p, naming the row, what was found and the range', (name, value) => {
    expect(fault('TEDSENCODE', rows({ [name]: value }))).toMatch(new RegExp(`^#VALUE!: fields row ${rowOf(name)}: ${name}: found .+; expected .+`));
  });
  test('a whole message: row, field, what was found, range and step', () => {
    expect(fault('TEDSENCODE', rows({ ExciteAmplNom: 60 })))
      .toBe('#VALUE!: fields row 14: ExciteAmplNom: found 60; expected a number from 0.1 to 51.1 (kept in steps of 0.1), or "not stated"');
    expect(fault('TEDSENCODE', rows({ SerialNumber: 'A123' }))).toBe('#VALUE!: fields row 5: SerialNumber: found the text "A123"; expected a whole number from 0 to 16777215');
  });
  test('any whole number outside a field of whole numbers (property)', () => {
    const bounds: Record<string, [number, number]> = { ...tedsDump.ranges_of_basic_teds, CalPeriod: [0, 4_095], MeasID: [0, 2_047] };
    fc.assert(fc.property(fc.constantFrom(...Object.keys(bounds)), fc.maxSafeInteger(), (name, value) => {
      const [least, greatest] = bounds[name];
      fc.pre(value < least || value > greatest);
      expect(fault('TEDSENCODE', rows({ [name]: value }))).toContain(`expected a whole number from ${least} to ${greatest}`);
    }));
  });
  test('fields left out, by name', () => {
    expect(fault('TEDSENCODE', rows().filter(([name]) => name !== 'MeasID' && name !== 'CalDate'))).toBe('#VALUE!: fields: found no row for CalDate, MeasID; expected every field once');
  });
  test('a field it does not know, and one given twice', () => {
    expect(fault('TEDSENCODE', [...rows(), ['Capacity', 50]])).toMatch(/^#VALUE!: fields row 21: found the field "Capacity"; expected one of ManufacturerID, .*MeasID$/);
    expect(fault('TEDSENCODE', [...rows(), ['measid', 5]])).toBe('#VALUE!: fields row 21: found MeasID again, after fields row 20; expected every field once');
  });
  test('a value without the name of its field, and a name that is a number', () => {
    expect(fault('TEDSENCODE', [...rows(), [null, 5]])).toBe('#VALUE!: fields row 21: found nothing; expected the name of a field');
    expect(fault('TEDSENCODE', [...rows(), [33, 5]])).toBe('#VALUE!: fields row 21: found 33; expected the name of a field');
  });
  test('one column, or four', () => {
    expect(fault('TEDSENCODE', column('MeasID', 5))).toBe('#VALUE!: fields: found 2 rows and 1 column; expected two columns, field and value, or three with the unit');
    expect(fault('TEDSENCODE', [['MeasID', 5, '', 'x']])).toMatch(/found 1 row and 4 columns/);
  });
  test('a unit that is not the field\'s: mV/V where V/V is kept, kN where the measurand is N', () => {
    const withUnit = (name: string, unit: string) => rows().map(([field, value]) => [field, value, field === name ? unit : null]);
    expect(fault('TEDSENCODE', withUnit('MaxElecVal', 'mV/V'))).toBe('#VALUE!: fields row 10: MaxElecVal: found the unit "mV/V"; expected V/V');
    expect(fault('TEDSENCODE', withUnit('MaxPhysVal', 'kN'))).toBe('#VALUE!: fields row 8: MaxPhysVal: found the unit "kN"; expected N');
    expect(fault('TEDSENCODE', withUnit('MeasID', 'V'))).toMatch(/expected no unit$/);
    expect(text('TEDSENCODE', withUnit('MaxPhysVal', 'N'))).toBe(text('TEDSENCODE', rows()));
  });
  test('another template, or another precision of the electrical values', () => {
    expect(fault('TEDSENCODE', [...rows(), ['TemplateID', 40]])).toBe('#VALUE!: fields row 21: TemplateID: found 40; expected 33');
    expect(fault('TEDSENCODE', [...rows(), ['FullScaleElecPrecision', 1]])).toMatch(/found 1; expected 2$/);
  });
});

describe('what TEDSENCODE takes', () => {
  const hex = text('TEDSENCODE', rows());
  test('names and words in any case, blank rows, a heading, the fixed fields, a date as its serial number', () => {
    const loose = [['Field', 'Value'], ...rows({ CalDate: 46_351, BridgeType: 'Full', CalInitials: 'jqp' }).map(([name, value]) => [String(name).toUpperCase(), value]), [null, null], ['TemplateID', 33]];
    expect(text('TEDSENCODE', loose)).toBe(hex);
  });
  test('a value between two steps as the nearest: 351.3 stays, 351.34 becomes it, 351.36 becomes 351.4', () => {
    const impedance = (value: number) => decoded(text('TEDSENCODE', rows({ SensorImped: value })))[11][1];
    expect([351.3, 351.34, 351.36].map(impedance)).toEqual([351.3, 351.3, 351.4]);
  });
  test('a response time to the nearest step of a factor 1.292 (step from memory)', () => {
    const kept = decoded(text('TEDSENCODE', rows({ RespTime: 0.001 })))[12][1];
    // By hand: ln(1000)/ln(1.292) = 26.96, so code 27: 1E-6·1.292^27 = 0.00101 s.
    expect(kept).toBeCloseTo(1e-6 * 1.292 ** 27, 12);
  });
  test('"not stated" as all ones, and shows it again (from memory)', () => {
    const changes = { RespTime: 'not stated', CalDate: 'not stated', ExciteAmplMin: 'not stated' };
    const found = Object.fromEntries(decoded(text('TEDSENCODE', rows(changes))).map(([name, value]) => [name, value]));
    expect(found).toMatchObject(changes);
  });
  test('units show beside the values: those of the physical values are the measurand', () => {
    const units = Object.fromEntries(decoded(hex).map(([name, , unit]) => [name, unit]));
    expect(units).toMatchObject({ MinPhysVal: 'N', MaxPhysVal: 'N', MaxElecVal: 'V/V', SensorImped: 'ohm', RespTime: 's', ExciteAmplNom: 'V', CalPeriod: 'days', MeasID: '' });
  });
});

describe('hex as people paste it', () => {
  const same = (hex: any) => expect(table('TEDSDECODE', hex, false)).toEqual(decoded(HEX));
  test('blanks, line breaks, small letters, "0x" in front of all or of each byte', () => {
    same([[HEX.toLowerCase()]]);
    same([[`0x${HEX}`]]);
    same([[` ${HEX.match(/../g)!.join(' ')} \n`]]);
    same([[HEX.match(/../g)!.map((byte) => `0X${byte}`).join('\r\n')]]);
    same([[HEX.match(/.{16}/g)!.join('\u00a0')]]);
  });
  test('several cells, read row by row, blanks between them', () => {
    same([[HEX.slice(0, 20), HEX.slice(20, 40)], [HEX.slice(40), null]]);
  });
  test('a character that is no digit is named with its place', () => {
    expect(fault('TEDSDECODE', [['1F40G2']])).toBe('#VALUE!: hex: found "G" as character 5; expected a hex digit, 0 to 9 or A to F');
    expect(fault('TEDSDECODE', column(HEX, '0x00 🦀'))).toBe('#VALUE!: hex row 2: found "🦀" as character 6; expected a hex digit, 0 to 9 or A to F');
    expect(fault('TEDSDECODE', [['1F0x40']])).toMatch(/found "x" as character 4/);
  });
  test('any one wrong character is found where it stands (property)', () => {
    fc.assert(fc.property(fc.nat(HEX.length - 1), fc.constantFrom('G', 'O', 'l', '-', ':', '.', 'é'), (at, wrong) => {
      expect(fault('TEDSDECODE', [[HEX.slice(0, at) + wrong + HEX.slice(at + 1)]])).toContain(`found "${wrong}" as character ${at + 1}`);
    }));
  });
  test('half a byte, too few bytes, none: the length, and the field in which it ends', () => {
    expect(fault('TEDSDECODE', [[HEX.slice(0, 79)]])).toBe('#VALUE!: hex: found 79 digits, so that digit 79 stands alone; expected two for each byte');
    expect(fault('TEDSDECODE', [[HEX.slice(0, 78)]])).toBe('#VALUE!: hex: found 78 digits, the end of which is in MeasID; expected at least 80');
    expect(fault('TEDSDECODE', [[HEX.slice(0, 16)]])).toMatch(/found 16 digits, the end of which is in Selector; expected at least 80/);
    expect(fault('TEDSDECODE', [[' ']])).toBe('#VALUE!: hex: found no hex digit; expected two for each byte');
  });
  test('digits that a cell took for a number', () => {
    expect(fault('TEDSDECODE', [[1040]])).toMatch(/^#VALUE!: hex: found 1040; expected hex digits as text/);
  });
});

describe('what TEDSDECODE refuses to read', () => {
  /** The published dump with another code in one field. */
  const withCode = (name: string, code: number): string => {
    const { offset, bits } = tedsDump.layout.find(({ field }: any) => field === name);
    const mask = ((1n << BigInt(bits)) - 1n) << BigInt(offset);
    const little = BigInt(`0x${HEX.match(/../g)!.reverse().join('')}`);
    return ((little & ~mask) | (BigInt(code) << BigInt(offset))).toString(16).padStart(80, '0').match(/../g)!.reverse().join('');
  };
  test.each([
    ['ManufacturerID', 16, 'bits 0 to 13: found the code 16; expected a whole number from 17 to 16381'],
    ['VersionLetter', 27, 'bits 29 to 33: found the code 27; expected one letter A to Z, or a blank'],
    ['PhysicalMeasurand', 46, 'bits 74 to 79: found the code 46; expected one of the words K, degC'],
    ['MaxPhysVal', 0x7f800000, 'bits 112 to 143: found the code 2139095040; expected 0 or a number'],
    ['BridgeType', 3, 'bits 210 to 211: found the code 3; expected one of the words quarter, half, full'],
    ['FullScaleElecPrecision', 0, 'bits 144 to 145: found the code 0; expected 2 (electrical values of another precision are not read)'],
    ['TemplateID', 25, 'bits 66 to 73: found the code 25; expected 33 (other templates are not read'],
    ['Selector_end', 0, 'bits 317 to 318: found the code 0; expected 3 (a further template follows, which is not read)'],
    ['ExtendedEndSelector', 0, 'bit 319: found the code 0; expected 1 (free text follows, which is not read)'],
  ])('%s with the code %d, naming its bits', (name, code, message) => {
    expect(fault('TEDSDECODE', [[withCode(name, code)]])).toContain(`#VALUE!: hex: ${name}, ${message}`);
  });
  test('user data behind the end, naming the byte', () => {
    expect(fault('TEDSDECODE', [[`${HEX}00FF4A`]])).toBe('#VALUE!: hex: found 4A in byte 43, digits 85 and 86, behind the end of the data; expected 00 or FF there, since user data is not read');
  });
  test('pages with their checksums: says to take them through TEDSDATA', () => {
    expect(fault('TEDSDECODE', column(...tedsDump.raw_pages_with_checksum))).toMatch(/TEDSDATA first/);
  });
});

describe('pages', () => {
  test('more pages than the data need are filled with zeros', () => {
    expect(table('TEDSPAGES', [[HEX]], 4).slice(2)).toEqual(column('0'.repeat(64), '0'.repeat(64)));
  });
  test('fewer pages than the data need are refused', () => {
    expect(fault('TEDSPAGES', [[HEX]], 1)).toBe('#VALUE!: pages: found 1; expected a whole number from 2 to 128');
    expect(fault('TEDSPAGES', [['00'.repeat(4000)]])).toBe('#VALUE!: hex: found 4000 bytes, which need 130 pages; expected at most 128');
  });
  test('a wrong checksum names its page, what it is and what it should be', () => {
    const [first, second] = tedsDump.raw_pages_with_checksum;
    expect(fault('TEDSDATA', column(first, `47${second.slice(2)}`))).toBe('#VALUE!: pages: page 2 begins with the checksum 47; expected 46 for the bytes behind it');
    expect(fault('TEDSDATA', [[first.slice(0, 60)]])).toBe('#VALUE!: pages: found 60 digits, the last page with 60; expected 64 a page');
  });
});
