import fc from 'fast-check';
import { fromPages, pagesFor, toPages } from '../../../src/metrology/teds/pages';
import { tedsDump } from '../../published';

const bytes = (hex: string) => Uint8Array.from(Buffer.from(hex, 'hex'));
const hex = (page: Uint8Array) => Buffer.from(page).toString('hex').toUpperCase();

test('the published data become the published pages, checksums in front', () => {
  const data = bytes(tedsDump.data_hex_without_checksums);
  expect(toPages(data, pagesFor(data.length)).map(hex)).toEqual(tedsDump.raw_pages_with_checksum);
});

test('the published pages give the published data, filled up with zeros', () => {
  const data = fromPages(bytes(tedsDump.raw_pages_with_checksum.join('')));
  expect(hex(data)).toBe(tedsDump.data_hex_without_checksums.padEnd(2 * 62, '0'));
});

test('a page fills up at 31 bytes of data', () => {
  expect([0, 1, 31, 32, 62, 63].map(pagesFor)).toEqual([1, 1, 1, 2, 2, 3]);
});

test('data come back from their pages, and each page adds up to a multiple of 256 (property)', () => {
  fc.assert(fc.property(fc.uint8Array({ minLength: 1, maxLength: 200 }), (data) => {
    const pages = toPages(data, pagesFor(data.length));
    for (const page of pages) expect(page.reduce((sum, byte) => sum + byte, 0) % 256).toBe(0);
    const back = fromPages(Uint8Array.from(pages.flatMap((page) => [...page])));
    expect([...back.subarray(0, data.length)]).toEqual([...data]);
    expect(back.subarray(data.length).every((byte) => byte === 0)).toBe(true);
  }));
});

test('any one changed byte is found, with the page it is in (property)', () => {
  const memory = bytes(tedsDump.raw_pages_with_checksum.join(''));
  fc.assert(fc.property(fc.nat(63), fc.integer({ min: 1, max: 255 }), (at, change) => {
    const spoilt = memory.slice();
    spoilt[at] ^= change;
    expect(() => fromPages(spoilt)).toThrow(`page ${at < 32 ? 1 : 2} begins with the checksum`);
  }));
});

test('half a page is refused with its length', () => {
  expect(() => fromPages(bytes('801F'))).toThrow('pages: found 4 digits, the last page with 4; expected 64 a page');
});
