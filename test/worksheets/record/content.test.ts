import fc from 'fast-check';
import { arrayText, contentOf, resultOf, rowsOfArray, valueOf } from '../../../src/worksheets/record/content';
import { onOneLine, spelt } from '../../../src/worksheets/record/line';
import type { ReadValue } from '../../../src/worksheets/readSheet';

const text = fc.string({ unit: 'grapheme', minLength: 1 });
const oddText = fc.constantFrom("'", '5', '-2', '+1', '.5', '{1,2}', '#N/A', 'TRUE', 'FALSE', ' ', '=A1', '1e-7', "''x", '"', 'a;b', 'a,"b"');
const number = fc.double({ noNaN: true, min: -1e300, max: 1e300 }).map((value) => (value === 0 ? 0 : value));
const value: fc.Arbitrary<ReadValue> = fc.oneof(text, oddText, number, fc.boolean(), fc.constantFrom('#N/A', '#VALUE!', '#DIV/0!').map((error) => ({ error })), fc.constant(null));

test.each<[ReadValue, string]>([
  [0.1, '0.1'], [1 / 3, '0.3333333333333333'], [-0, '0'], [2e-7, '2e-7'], [true, 'TRUE'], ['TRUE', "'TRUE"], ['7', "'7"], [7, '7'], ['=1+1', "'=1+1"],
  ["'quoted", "''quoted"], [' ', "' "], ['Cell A', 'Cell A'], [{ error: '#N/A' }, '#N/A'], ['#N/A', "'#N/A"], [null, ''],
])('%j is recorded as %s', (held, recorded) => {
  expect(contentOf(held)).toBe(recorded);
});

test('what a formula gave is recorded to 15 digits', () => {
  expect(resultOf(2.0000100000000003)).toBe('2.00001');
  expect(resultOf(0.1 + 0.2)).toBe('0.3');
  expect(resultOf(1 / 3)).toBe('0.333333333333333');
});

test('every value is read back from what is recorded of it', () => {
  fc.assert(fc.property(value, (held) => expect(valueOf(contentOf(held))).toEqual(held)));
});

test('an array is read back as it was, blanks as empty texts', () => {
  const rows = fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }))
    .chain(([height, width]) => fc.array(fc.array(value, { minLength: width, maxLength: width }), { minLength: height, maxLength: height }));
  fc.assert(fc.property(rows, (held) => {
    const expected = held.map((row) => row.map((one) => (one === null ? '' : typeof one === 'number' ? Number(one.toPrecision(15)) : one)));
    expect(rowsOfArray(arrayText(held))).toEqual(expected);
  }));
});

test('a single result that looks like an array is told from one', () => {
  expect(rowsOfArray(resultOf('{1,2}'))).toBeUndefined();
  expect(rowsOfArray('{1,2;3,"a;b"}')).toEqual([[1, 2], [3, 'a;b']]);
});

test('any text stands on one line and is spelt out again', () => {
  fc.assert(fc.property(fc.oneof(fc.string({ unit: 'grapheme' }), fc.string({ unit: fc.constantFrom('\\', 't', 'n', 'u', '0', '\t', '\n', '\r', '\u0001', '\u007f') })), (held) => {
    expect(onOneLine(held)).not.toMatch(/[\t\n\r\u0000-\u001f]/); // eslint-disable-line no-control-regex -- none may be left
    expect(spelt(onOneLine(held))).toBe(held);
  }));
});
