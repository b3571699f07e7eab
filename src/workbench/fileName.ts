import type { SheetContent, SheetHost } from '../hosts/sheetHost';

/** What file systems refuse in a name, and control characters. */
const REFUSED = /[\\/:*?"<>|\p{Cc}]+/gu;
const LONGEST = 100;

/** What the file of a workbook is called: the number of its job, or else its first sheet. */
export async function fileNameFor(host: Pick<SheetHost, 'sheets' | 'read'>): Promise<string> {
  const sheets = await host.sheets();
  for (const { name } of sheets) {
    const number = jobNumber(await host.read(name));
    if (number !== undefined) return `${asFileName(number)}.xlsx`;
  }
  return `${asFileName(sheets[0]?.name ?? '')}.xlsx`;
}

function jobNumber({ names, cells }: SheetContent): string | undefined {
  const at = names.find(({ name }) => name === 'job_number')?.range.split(':')[0];
  const value = cells.find((cell) => cell.at === at)?.value;
  return typeof value === 'string' || typeof value === 'number' ? String(value) : undefined;
}

/** Words as a file may be called; "workbook" if nothing is left of them. */
export function asFileName(words: string): string {
  return words.replace(REFUSED, '-').slice(0, LONGEST).replace(/^[\s.-]+|[\s.-]+$/g, '') || 'workbook';
}
