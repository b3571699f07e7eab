import type { Review } from './reviewFinding';
import { countWords, KIND_WORDS, recomputedWords, recordWords, SEVERITIES } from './reviewWords';

/** What became of a file: reviewed, or why it could not be. */
export type ReviewedFile = { readonly file: string; readonly review: Review } | { readonly file: string; readonly failure: string };

/** Whether there is anything to look at: a finding, or a file that could not be read. */
export function needsALook(file: ReviewedFile): boolean {
  return 'failure' in file || file.review.findings.length > 0;
}

/** One file of a report as text: what was found, the gravest first, each with its cell. */
export function reportText(reviewed: ReviewedFile): string {
  if ('failure' in reviewed) return `${reviewed.file}: not reviewed: ${reviewed.failure}\n`;
  const { file, review } = reviewed;
  const head = `${file}: ${countWords(review.findings)}; ${recomputedWords(review)}; ${recordWords(review)}\n`;
  const lines = SEVERITIES.flatMap(({ severity }) => review.findings.filter((one) => one.severity === severity))
    .map(({ severity, kind, sheet, at, message }) => `  ${severity.padEnd(8)}${KIND_WORDS[kind].padEnd(12)}${sheet}!${at}: ${onOneLine(message)}\n`);
  return head + lines.join('');
}

const HEADS = ['File', 'Severity', 'Kind', 'Sheet', 'Cell', 'Message'];

/** The first line of a report as comma-separated values. */
export function reportCsvHead(): string {
  return csvLine(HEADS);
}

/** One file as comma-separated values: a line a finding; one line also for a file without. */
export function reportCsv(reviewed: ReviewedFile): string {
  if ('failure' in reviewed) return csvLine([reviewed.file, 'wrong', 'Not reviewed', '', '', reviewed.failure]);
  const { file, review: { findings } } = reviewed;
  if (findings.length === 0) return csvLine([file, '', '', '', '', countWords(findings)]);
  return findings.map(({ severity, kind, sheet, at, message }) => csvLine([file, severity, KIND_WORDS[kind], sheet, at, message])).join('');
}

/** How many files, and of how many something was found. */
export function reportSummary(files: readonly ReviewedFile[]): string {
  const failed = files.filter((file) => 'failure' in file).length;
  const found = files.filter((file) => !('failure' in file) && needsALook(file)).length;
  const counted = (count: number) => `${count} ${count === 1 ? 'file' : 'files'}`;
  return `${counted(files.length)}: ${files.length - failed - found} without a finding, ${found} with findings, ${failed} not reviewed\n`;
}

/** Fields in double quotes; one that a spreadsheet would take for a formula gets an apostrophe before it. */
function csvLine(fields: readonly string[]): string {
  return `${fields.map((field) => `"${(/^[=+\-@\t\r]/.test(field) ? `'${field}` : field).replaceAll('"', '""')}"`).join(',')}\r\n`;
}

function onOneLine(text: string): string {
  return text.replace(/\s*[\r\n]+\s*/g, ' ');
}
