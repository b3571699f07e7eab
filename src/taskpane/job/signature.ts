import type { SheetContent } from '../../hosts/sheetHost';
import { dateText } from '../../worksheets/check/serialDate';
import type { Job, Missing } from '../../worksheets/job/job';
import type { JobFunctions, Sheets } from './jobFunctions';
import { isOver } from './stepWords';

/** Whether the workbook is signed, and what differs since. */
export interface SignatureState {
  readonly words: string;
  readonly isSigned: boolean;
  /** True if nothing differs since. */
  readonly isFresh: boolean;
  /** Cells that differ, as ways to them. */
  readonly changed: readonly Missing[];
}

/** How the record stands to what the workbook holds now. */
export function signatureState(sheets: readonly SheetContent[], functions: JobFunctions): SignatureState {
  const record = functions.readRecord(sheets);
  if (!record) return { words: 'Not signed yet.', isSigned: false, isFresh: false, changed: [] };
  const differing = functions.differences(record, sheets);
  const signed = `Signed by ${record.signedBy || 'nobody named'}${record.signedOn === undefined ? '' : ` on ${dateText(record.signedOn)}`}`;
  const changed = differing.map(({ sheet, at, was, is }) => ({ sheet, at, message: `was ${shown(was)}, is ${shown(is)}` }));
  const words = changed.length === 0 ? `${signed}. Everything is as signed.` : `${signed}. Since then ${changed.length === 1 ? 'one cell differs' : `${changed.length} cells differ`}.`;
  return { words, isSigned: true, isFresh: changed.length === 0, changed };
}

/** True if every item has come so far that only the review is left, which looks at what was signed. */
export function isReadyToSign(job: Job, sheets: Sheets, functions: JobFunctions): boolean {
  return job.items.length > 0 && job.items.every((item) => functions.wayOf(job, item, sheets).every((state) => isOver(state) || state.step === 'reviewed'));
}

const LONGEST = 60;

function shown(content: string): string {
  if (content === '') return 'empty';
  return `“${content.length > LONGEST ? `${content.slice(0, LONGEST)}…` : content}”`;
}
