import { badInput } from '../errors';

/** Bytes of one page of memory, the checksum in front included. */
export const PAGE_BYTES = 32;
const DATA_BYTES = PAGE_BYTES - 1;

/** Pages that so many bytes of data need. */
export function pagesFor(dataBytes: number): number {
  return Math.max(1, Math.ceil(dataBytes / DATA_BYTES));
}

/**
 * Data as pages of memory: 31 bytes each, filled up with zeros, behind a checksum byte that makes the sum of the page's 32
 * bytes a multiple of 256. Source: rule found in a published memory dump, and met by both of its pages.
 * @param count pages to make, at least as many as the data need
 */
export function toPages(data: Uint8Array, count: number): Uint8Array[] {
  return Array.from({ length: count }, (_, i) => {
    const page = new Uint8Array(PAGE_BYTES);
    page.set(data.subarray(i * DATA_BYTES, (i + 1) * DATA_BYTES), 1);
    page[0] = -sumOf(page); // a byte keeps the remainder of 256
    return page;
  });
}

/** The data of pages of memory, their checksums verified and taken off. Errors: half a page; a sum that is not a multiple of 256. */
export function fromPages(memory: Uint8Array): Uint8Array {
  if (memory.length % PAGE_BYTES !== 0) {
    throw badInput(`pages: found ${2 * memory.length} digits, the last page with ${2 * (memory.length % PAGE_BYTES)}; expected ${2 * PAGE_BYTES} a page`);
  }
  const count = memory.length / PAGE_BYTES;
  const data = new Uint8Array(count * DATA_BYTES);
  for (let i = 0; i < count; i += 1) {
    const page = memory.subarray(i * PAGE_BYTES, (i + 1) * PAGE_BYTES);
    checkSum(page, i);
    data.set(page.subarray(1), i * DATA_BYTES);
  }
  return data;
}

function checkSum(page: Uint8Array, index: number): void {
  const due = -sumOf(page.subarray(1)) & 0xff;
  if (page[0] === due) return;
  const shown = (byte: number) => byte.toString(16).toUpperCase().padStart(2, '0');
  throw badInput(`pages: page ${index + 1} begins with the checksum ${shown(page[0])}; expected ${shown(due)} for the bytes behind it`);
}

function sumOf(bytes: Uint8Array): number {
  return bytes.reduce((sum, byte) => sum + byte, 0);
}
