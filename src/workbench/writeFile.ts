/** Loaded when a file is first saved: the library that writes it is larger than the rest of the page's own code. */
import start from 'wasm-xlsxwriter/web';
import { type FileSheet, writeWorkbook } from '../hosts/file/writeWorkbook';

let started: Promise<unknown> | undefined;

/** The bytes of a workbook file (.xlsx). Throws in words if its writer cannot start, and naming the cell on what a file cannot hold. */
export async function writeFile(sheets: readonly FileSheet[]): Promise<Uint8Array> {
  try {
    await (started ??= start());
  } catch (error) {
    started = undefined;
    throw new Error(`the part that writes files could not be started (${String(error)}). Check that its server is still running (npm start), then try again.`, { cause: error });
  }
  return writeWorkbook(sheets);
}
