import { strFromU8, unzipSync } from 'fflate';
import { writeWorkbook } from '../../../src/hosts/file/writeWorkbook';
import type { FileSheet } from '../../../src/hosts/file/writeWorkbook';

/** The parts of the file of some sheets, as text. */
export async function partsOf(...sheets: FileSheet[]): Promise<Record<string, string>> {
  const parts = unzipSync(await writeWorkbook(sheets));
  return Object.fromEntries(Object.entries(parts).map(([name, bytes]) => [name, strFromU8(bytes)]));
}

/** The XML of one cell of a sheet. */
export function cellXml(sheet: string, at: string): string {
  const found = new RegExp(`<c r="${at}"(?:[^>]*/>|.*?</c>)`).exec(sheet);
  if (!found) throw new Error(`no cell ${at}`);
  return found[0];
}
