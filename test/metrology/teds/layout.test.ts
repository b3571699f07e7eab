/** The layout against the published dump: every field's place, length and code. */
import { takeBits } from '../../../src/metrology/teds/bits';
import { LAYOUT, LAYOUT_BYTES } from '../../../src/metrology/teds/layout';
import { MEASURANDS } from '../../../src/metrology/teds/measurands';
import { tedsDump } from '../../published';

const dump = Uint8Array.from(Buffer.from(tedsDump.data_hex_without_checksums, 'hex'));

test('fields stand in the order, at the bit and with the length of the published layout', () => {
  expect(LAYOUT.map(({ name, offset, type }) => ({ field: name, offset, bits: type.bits })))
    .toEqual(tedsDump.layout.map(({ field, offset, bits }: any) => ({ field, offset, bits })));
  expect(LAYOUT_BYTES).toBe(40);
});

test.each<[string, any]>(tedsDump.layout.map((field: any) => [field.field, field]))('%s has its published code in the published dump, lowest bit first', (_, { offset, bits, code }) => {
  expect(takeBits(dump, offset, bits)).toBe(code);
});

test('the units of the measurand are those of the public list, in its order from 0', () => {
  expect(MEASURANDS).toEqual(tedsDump.measurands);
});
