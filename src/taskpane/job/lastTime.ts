import type { LastResults } from '../../worksheets/comparison/lastResults';
import type { ReadSheet } from '../../worksheets/readSheet';
import { button, element } from '../dom';
import type { JobDesk } from './jobDesk';
import { draftKey, type StepAt } from './stepAt';

/** What was taken from a file, for a comparison that is still to be built. */
interface LastTime {
  readonly file: string;
  readonly results: readonly LastResults[];
}

/** Last time's results that were taken from a file for this item, and are not on a sheet yet. */
export function lastTimeOf(at: StepAt, desk: JobDesk): LastTime | undefined {
  try {
    const held: unknown = JSON.parse(desk.drafts.words(keyOf(at)));
    return typeof held === 'object' && held !== null && 'results' in held && Array.isArray(held.results) ? (held as LastTime) : undefined;
  } catch {
    return undefined;
  }
}

/** The way to take last time's results from a previous workbook: into the comparison that stands, or for the one to be built. */
export function lastTimePart(at: StepAt, desk: JobDesk, comparison: ReadSheet | undefined): HTMLElement {
  const file = element('input', { attributes: { type: 'file', accept: '.xlsx', hidden: '', 'aria-label': 'Previous workbook' } });
  file.addEventListener('change', () => {
    const chosen = file.files?.[0];
    if (chosen) void take(at, desk, comparison, chosen).finally(() => { file.value = ''; });
  });
  const held = comparison ? undefined : lastTimeOf(at, desk);
  return element('div', { class: 'rp-last', children: [
    ...(held ? [element('p', { children: [`Last time’s results are taken from “${held.file}”.`] })] : []),
    button('Last time from a workbook…', () => file.click(), { attributes: { 'data-key': 'last time' } }),
    file,
    element('p', { class: 'rp-help', children: ['The .xlsx file of the previous calibration; without one, its coefficients are typed on the comparison.'] }),
  ] });
}

function take(at: StepAt, desk: JobDesk, comparison: ReadSheet | undefined, file: File): Promise<void> {
  return desk.do(`Reading “${file.name}” …`, async () => {
    const results = desk.functions.lastResults(await desk.readWorkbook(await bytesOf(file)));
    if (results.length === 0) throw new Error(`No sheet of “${file.name}” holds the results of a run.`);
    if (!comparison) {
      const taken: LastTime = { file: file.name, results };
      desk.drafts.keep(keyOf(at), JSON.stringify(taken));
      return `Last time’s results are taken from “${file.name}”; the comparison will hold them.`;
    }
    await desk.fill(comparison.name, desk.functions.lastEntries(comparison, results, at.item));
    return `Last time’s results from “${file.name}” stand on “${comparison.name}”.`;
  });
}

/** The file's content; a file that is no workbook is told by what reads it. */
async function bytesOf(file: File): Promise<Uint8Array> {
  return new Uint8Array(await file.arrayBuffer());
}

function keyOf(at: StepAt): string {
  return draftKey(at, 'last time');
}
