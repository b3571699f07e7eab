import { strFromU8, unzipSync } from 'fflate';
import { writeWorkbook } from '../../../src/hosts/file/writeWorkbook';
import type { FileSheet } from '../../../src/hosts/file/writeWorkbook';

/** The parts of the file of some sheets, as text. */
export async function partsOf(...sheets: FileSheet[]): Promise<Record<string, string>> {
  return partsFrom(await writeWorkbook(sheets));
}

/** The parts of a file, as text. */
export function partsFrom(file: Uint8Array): Record<string, string> {
  return Object.fromEntries(Object.entries(unzipSync(file)).map(([name, bytes]) => [name, strFromU8(bytes)]));
}

/** The XML of one cell of a sheet. */
export function cellXml(sheet: string, at: string): string {
  const found = new RegExp(`<c r="${at}"(?:[^>]*/>|.*?</c>)`).exec(sheet);
  if (!found) throw new Error(`no cell ${at}`);
  return found[0];
}
