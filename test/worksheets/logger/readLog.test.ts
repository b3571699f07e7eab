import fc from 'fast-check';
import { decimated } from '../../../src/worksheets/logger/decimate';
import { LogError } from '../../../src/worksheets/logger/logError';
import { readLog } from '../../../src/worksheets/logger/readLog';
import { readingsAt } from '../../../src/worksheets/logger/readingsAt';
import { traceFrom } from '../../../src/worksheets/logger/trace';
import { unitFactor } from '../../../src/worksheets/logger/unitFactor';
import { logWords } from '../../../src/worksheets/logger/words';

const channel = (text: string, i = 0): number[] => [...readLog(text).channels[i].values];
const time = (text: string): number[] => [...readLog(text).time];

test.each([
  ['a plain column', '0.001\n10.5\n20\n', [0.001, 10.5, 20]],
  ['a plain column with decimal commas', '0,001\n10,012\n20,034', [0.001, 10.012, 20.034]],
  ['a column of decimal commas that rises unevenly', '1,345\n12,456\n20,567\n', [1.345, 12.456, 20.567]],
  ['a byte order mark, blank lines and comments', '\ufeff# by hand\r\n1.5\r\n\r\n2.5\r\n', [1.5, 2.5]],
  ['line ends of old', '1.5\r2.5\r', [1.5, 2.5]],
  ['quoted fields with decimal commas between commas', '"Time, s","Load"\n"0,0","1,5"\n"0,5","2,5"\n"1,0","3,5"\n', [1.5, 2.5, 3.5]],
  ['a typographic minus and exponents', '\u22121.5\n2.5e-3\n', [-1.5, 0.0025]],
])('reads %s', (_, text, expected) => expect(channel(text)).toEqual(expected));

test.each([
  ['seconds', 'Time [s];Force\n0;1\n0,5;2\n1,5;3\n', [0, 0.5, 1.5]],
  ['milliseconds', 't (ms),F (kN)\n100,1.5\n200,2.5\n300,3.5\n', [0, 0.1, 0.2]],
  ['a clock past midnight', '23:59:59.5 1.0\n00:00:00.5 2.0\n', [0, 1]],
  ['a clock of twelve hours', '11:59:59 AM,1.5\n12:00:01 PM,1.5\n', [0, 2]],
  ['a date with a time', '2026-11-25T10:00:00.250Z;1,5\n2026-11-25T10:00:01.250Z;2,5\n', [0, 1]],
  ['date and clock in two columns', '25.11.2026;10:00:00;1,5\n26.11.2026;10:00:00;2,5\n', [0, 86_400]],
])('reads time as %s', (_, text, expected) => time(text).forEach((at, i) => expect(at).toBeCloseTo(expected[i], 6)));

test('heads give names and units, a line of units too', () => {
  const log = readLog('Bench 4;;\nTime;Signal;Load\ns;mV/V;kN\n0;0,01;0\n1;0,02;1\n2;0,03;2\n');
  expect(log.channels.map(({ name, unit }) => [name, unit])).toEqual([['Signal', 'mV/V'], ['Load', 'kN']]);
  expect(logWords(log).slice(0, 3)).toEqual([
    '6 lines, 3 above the first sample; 3 samples in 2 channels: Signal in mV/V, Load in kN.',
    'Semicolons between the fields, decimal comma, time as a number in “Time”.',
    'Every 1 s, 2 s long.',
  ]);
});

test('samples without a value are passed over and counted, and a last line cut off is left out and said', () => {
  const log = readLog('0,1.5,a\n1,,a\n2,OL,b\n3,2.5,b\n4,2');
  expect([...log.channels[0].values]).toEqual([1.5, Number.NaN, Number.NaN, 2.5]);
  expect(log.channels[0].missing).toBe(2);
  expect(log.notes).toEqual(['Column 3 holds words and is left out.', 'Line 5, the last, is cut off and left out.']);
});

test.each([
  ['words among readings', '1.5\n2.5\nabc\n3.5\n', 3, 'found “abc” in column 1; expected a number with decimal point, or nothing.'],
  ['a field too many', '0;1,5\n1;2,5\n2;3,5;7\n3;4,5\n', 3, 'found 3 fields in “2;3,5;7”; expected 2, as in the lines above.'],
  ['nothing', '', 1, 'found nothing'],
  ['words alone', 'Dear all,\nplease find\n', 1, 'found “Dear all,”; expected a line with numbers somewhere below it, but up to line 2'],
  ['a file that is no text', 'PK\u0003\u0004\0\0', 1, 'bytes that are no text'],
  ['a clock that cannot be', '10:00:00;1,5\n10:00:01;2,5\n10:00:99;3,5\n', 3, 'expected a time like 09:05:12'],
])('%s: refused with the line', (_, text, line, words) => {
  let error: unknown;
  try { readLog(text); } catch (thrown) { error = thrown; }
  expect(error).toBeInstanceOf(LogError);
  expect((error as LogError).message).toMatch(`Line ${line}: `);
  expect((error as LogError).message).toContain(words);
});

test('a time that goes back far below the first lines is refused with its line', () => {
  const lines = Array.from({ length: 900 }, (_, i) => `${i === 800 ? 5 : i / 10};${i % 7},5`.replace('.', ','));
  expect(() => readLog(lines.join('\n'))).toThrow(/^Line 801: found the time “5”, earlier than in the line before/);
});

test('what is said of the form is taken instead of what was found', () => {
  expect([...readLog('1,345\n2,456\n3,567\n').channels[0].values]).toEqual([345, 456, 567]);
  expect([...readLog('1,345\n2,456\n3,567\n', { delimiter: ';', decimal: ',' }).channels[0].values]).toEqual([1.345, 2.456, 3.567]);
  expect(readLog('0;1\n1;2\n2;3\n', { time: 'none' }).channels).toHaveLength(2);
});

test('blank lines change nothing but the count of lines', () => {
  fc.assert(fc.property(fc.array(fc.integer({ min: -99_999, max: 99_999 }), { minLength: 3, maxLength: 40 }), fc.nat(40), (values, at) => {
    const lines = values.map((value, i) => `${i};${(value / 1000).toFixed(3).replace('.', ',')}`);
    const spaced = lines.toSpliced(Math.min(at, lines.length), 0, '', '   ');
    expect(channel(spaced.join('\n'))).toEqual(values.map((value) => value / 1000));
    expect(time(spaced.join('\r\n'))).toEqual(time(lines.join('\n')));
  }));
});

test('a decimated trace keeps its least and greatest value, in order and within the count', () => {
  fc.assert(fc.property(fc.array(fc.double({ noNaN: true, min: -9, max: 9 }), { minLength: 50, maxLength: 400 }), (values) => {
    const { x, y } = decimated(traceFrom(Float64Array.from(values, (_, i) => i), Float64Array.from(values)), 40);
    expect(x.length).toBeLessThanOrEqual(40);
    expect([Math.min(...y), Math.max(...y)]).toEqual([Math.min(...values), Math.max(...values)]);
    expect(x).toEqual(x.toSorted((a, b) => a - b));
  }));
});

test('readings at minutes after a start are means around them, none beyond the log', () => {
  const at = Float64Array.from({ length: 1300 }, (_, i) => i / 2);
  const values = at.map((seconds) => 2 + 1e-4 * (seconds - 20));
  const found = readingsAt(traceFrom(at, values), 20, [0.5, 1, 10, 11, undefined]);
  expect(found.map((one) => one && Number(one.mean.toFixed(9)))).toEqual([2.003, 2.006, 2.06, undefined, undefined]);
});

test('units of the log and the sheet give the factor', () => {
  expect(unitFactor('µV/V', 'mV/V')).toBe(0.001);
  expect(unitFactor('N', 'kN')).toBeCloseTo(0.001, 15);
  expect(unitFactor('kN', 'mV/V')).toBeUndefined();
});
