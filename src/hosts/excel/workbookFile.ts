/** Office's own limit for a part of a file. */
const SLICE = 4_194_304;

/** The part of Office's document that gives the file. */
export type FileSource = Pick<Office.Document, 'getFileAsync'>;

/**
 * The workbook as the bytes of a file (.xlsx), as Excel would save it now. Office keeps the file in memory until it is closed,
 * and refuses a third one, so it is closed whatever happens.
 */
export async function workbookFile(document: FileSource): Promise<Uint8Array> {
  const file = await answer<Office.File>((tell) => document.getFileAsync(COMPRESSED, { sliceSize: SLICE }, tell));
  try {
    const bytes = new Uint8Array(file.size);
    let filled = 0;
    for (let index = 0; index < file.sliceCount; index += 1) {
      const { data } = await answer<Office.Slice>((tell) => file.getSliceAsync(index, tell));
      const part = data as ArrayLike<number>;
      if (filled + part.length > bytes.length) throw new Error(`found more than ${bytes.length} bytes in the file; expected no more`);
      bytes.set(part, filled);
      filled += part.length;
    }
    if (filled < bytes.length) throw new Error(`found ${filled} bytes of the file; expected ${bytes.length}`);
    return bytes;
  } finally {
    await answer((tell) => file.closeAsync(tell)).catch(() => undefined);
  }
}

/** Opens a file as a new workbook beside the one that is open, not saved anywhere yet. `create` is Excel.createWorkbook. */
export async function openCopy(bytes: Uint8Array, create: (base64: string) => Promise<void>): Promise<void> {
  try {
    await create(base64(bytes));
  } catch (error) {
    throw new Error(`Excel did not open the copy (${error instanceof Error ? error.message : String(error)}). Your workbook is as it was.`, { cause: error });
  }
}

// Office.FileType.Compressed, written out, since Office may not have loaded when this file is read.
const COMPRESSED = 'compressed' as unknown as Office.FileType;

/** What Office answers, as a promise. */
function answer<T>(ask: (tell: (result: Office.AsyncResult<T>) => void) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    ask(({ status, value, error }) => {
      if (String(status) === 'succeeded') resolve(value);
      else reject(new Error(`${error?.message ?? 'Excel gave no file'}${error?.code === undefined ? '' : ` (${error.code})`}`));
    });
  });
}

/** Bytes as text that Office takes; in pieces, since a call takes only so many arguments. */
function base64(bytes: Uint8Array): string {
  const PIECE = 0x8000;
  let letters = '';
  for (let start = 0; start < bytes.length; start += PIECE) letters += String.fromCharCode(...bytes.subarray(start, start + PIECE));
  return btoa(letters);
}
