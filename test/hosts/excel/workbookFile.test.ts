/** The file of the workbook, which Office gives in slices, and the copy that Excel opens. */
import { ExcelSheets } from '../../../src/hosts/excel/excelSheets';
import { openCopy, workbookFile } from '../../../src/hosts/excel/workbookFile';
import { FakeExcel } from './fakeExcel';

const SLICE = 4_194_304;
function bytesOf(length: number): Uint8Array {
  const bytes = new Uint8Array(length);
  for (let i = 0; i < length; i += 1) bytes[i] = (i * 31) % 251;
  return bytes;
}

/** Office's document: gives its bytes in slices, and keeps count of what is open. `fails` names the step that does not succeed. */
function fakeDocument(bytes: Uint8Array, fails: { readonly get?: boolean; readonly slice?: number; readonly close?: boolean; readonly short?: boolean } = {}) {
  const state = { open: 0, asked: [] as unknown[][] };
  const tell = (callback: (result: never) => void, value: unknown, failed = false) =>
    setTimeout(() => callback((failed ? { status: 'failed', error: { code: 5001, message: 'Internal error.' } } : { status: 'succeeded', value }) as never), 0);
  const getFileAsync = (type: unknown, options: { sliceSize: number }, callback: (result: never) => void): void => {
    state.asked.push([type, options]);
    if (!fails.get) state.open += 1;
    const file = {
      size: bytes.length,
      sliceCount: Math.ceil(bytes.length / options.sliceSize),
      getSliceAsync: (index: number, told: (result: never) => void) => {
        const end = (index + 1) * options.sliceSize - (fails.short ? 1 : 0);
        tell(told, { index, data: bytes.subarray(index * options.sliceSize, end) }, fails.slice === index);
      },
      closeAsync: (told: (result: never) => void) => {
        state.open -= 1;
        tell(told, undefined, fails.close);
      },
    };
    tell(callback, file, fails.get);
  };
  return { document: { getFileAsync } as never, state };
}

test.each([0, 1, 1000, SLICE, SLICE + 1])('a file of %i bytes comes whole, and is closed', async (length) => {
  const bytes = bytesOf(length);
  const { document, state } = fakeDocument(bytes);
  const got = await workbookFile(document);
  expect(Buffer.compare(got, bytes)).toBe(0);
  expect(state).toEqual({ open: 0, asked: [['compressed', { sliceSize: SLICE }]] });
});

test('if a slice does not come, or comes short, the words say so and the file is closed', async () => {
  const failing = fakeDocument(bytesOf(SLICE + 5), { slice: 1 });
  await expect(workbookFile(failing.document)).rejects.toThrow('Internal error. (5001)');
  expect(failing.state.open).toBe(0);
  const short = fakeDocument(bytesOf(SLICE), { short: true });
  await expect(workbookFile(short.document)).rejects.toThrow(`found ${SLICE - 1} bytes of the file; expected ${SLICE}`);
  expect(short.state.open).toBe(0);
});

test('a file that does not close is given nevertheless', async () => {
  const { document } = fakeDocument(bytesOf(10), { close: true });
  expect(await workbookFile(document)).toEqual(bytesOf(10));
});

describe('the host', () => {
  test('gives the file', async () => {
    const excel = new FakeExcel();
    const { document } = fakeDocument(bytesOf(10));
    expect(await new ExcelSheets(excel.run, () => true, () => document).save()).toEqual(bytesOf(10));
  });

  test('says why Excel gave no file, and what can be done instead', async () => {
    const { document, state } = fakeDocument(bytesOf(10), { get: true });
    await expect(new ExcelSheets(new FakeExcel().run, () => true, () => document).save())
      .rejects.toThrow('Excel did not give the file of the workbook: Internal error. (5001). Try again, or use Save As in Excel.');
    expect(state.open).toBe(0);
    await expect(new ExcelSheets(new FakeExcel().run, () => true).save()).rejects.toThrow('Use Save As in Excel.');
  });
});

test('a copy is opened from its bytes, and a refusal leaves words', async () => {
  const bytes = bytesOf(100_000);
  let opened = '';
  await openCopy(bytes, async (base64) => { opened = base64; });
  expect(Buffer.from(opened, 'base64').equals(Buffer.from(bytes))).toBe(true);
  await expect(openCopy(bytes, () => Promise.reject(new Error('blocked')))).rejects.toThrow('Excel did not open the copy (blocked). Your workbook is as it was.');
});
