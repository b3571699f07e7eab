import { checkSheet } from '../worksheets/check/checkSheet';
import type { Job } from '../worksheets/job/job';
import { jobOf } from '../worksheets/job/readJob';
import type { ReadSheet } from '../worksheets/readSheet';
import { readRecord } from '../worksheets/record/readRecord';
import { isRecorded } from '../worksheets/record/recordLines';
import { certificate } from './certificate';
import { found, held } from './finding';
import { itemOfSheet, jobLinks } from './jobLinks';
import { limits } from './limits';
import { links, sheetsByName } from './links';
import { overwritten } from './overwritten';
import { plainChecks } from './plainChecks';
import { agrees, type Expected } from './recompute/expected';
import { expectedValues } from './recompute/recompute';
import { rebuilt } from './rebuilt';
import { recordFindings, withFormulas } from './recordFindings';
import type { Review, ReviewFinding } from './reviewFinding';
import type { ReviewedSheet } from './reviewedSheet';
import { rounding } from './rounding';
import { standards } from './standards';
import { verdicts } from './verdicts';

/** What a review is told besides the workbook. */
export interface ReviewOptions {
  /** The day it is made on, as a spreadsheet counts days; without it no date is too late. */
  readonly today?: number;
}

/**
 * Reviews a workbook from what its cells hold: every result again by an independent path (to 1e-9 of the value), plain checks and
 * verdicts, formulas and limits against template, job and record, standards, and roundings that hide a failure. A sound workbook
 * gives no finding, whether it was read from a grid, from a file, or is an issue copy with its record.
 */
export function review(read: readonly ReadSheet[], { today }: ReviewOptions = {}): Review {
  const record = readRecord(read);
  const sheets = record ? withFormulas(record, read) : read;
  const job = jobOf(sheets);
  const byName = sheetsByName(sheets);
  const signed = record ? recordFindings(record, read, filledLater(sheets)) : [];
  let [recomputed, agreeing] = [0, 0];
  const ofSheets = sheets.filter(isRecorded).flatMap((sheet) => {
    const reviewed = byName.get(sheet.name.toLowerCase()) as ReviewedSheet;
    const expected = expectedValues(reviewed);
    recomputed += expected.length;
    agreeing += expected.filter(agrees).length;
    return ofSheet(reviewed, expected, { job, sheets, byName, today });
  });
  return {
    findings: distinct([...ofSheets, ...signed]),
    recomputed, agreeing, sheets: sheets.map(({ name }) => name),
    record: record === undefined ? 'none' : signed.length === 0 ? 'as signed' : 'differs',
    ...(record ? { fingerprint: record.everything } : {}),
  };
}

/** What a sheet stands among. */
interface Surroundings {
  readonly job: Job | undefined;
  readonly sheets: readonly ReadSheet[];
  readonly byName: ReadonlyMap<string, ReviewedSheet>;
  readonly today: number | undefined;
}

function ofSheet(sheet: ReviewedSheet, expected: readonly Expected[], { job, sheets, byName, today }: Surroundings): ReviewFinding[] {
  const plan = rebuilt(sheet, job, sheets);
  const item = job && itemOfSheet(job, sheet.name);
  const own = item ? job : undefined;
  return [
    ...results(sheet, expected), ...plainChecks(sheet, expected), ...verdicts(sheet, expected), ...rounding(sheet, expected),
    ...overwritten(sheet, plan), ...links(sheet, byName), ...limits(sheet, plan, own), ...standards(sheet, own, today),
    ...(job && item ? jobLinks(sheet, job, item) : []), ...certificate(sheet, byName), ...ofCheck(sheet),
  ];
}

function results(sheet: ReviewedSheet, expected: readonly Expected[]): ReviewFinding[] {
  return expected.filter((one) => !agrees(one)).map(({ cell, value }) =>
    found(sheet, cell, 'result', `${cell.at} holds ${held(cell.value, cell.format)}; expected ${held(value, cell.format)}, recomputed from the readings by an independent path`));
}

/** What the check of a single sheet finds wrong; what this review says better is left to it. */
function ofCheck(sheet: ReviewedSheet): ReviewFinding[] {
  return checkSheet(sheet.read).filter(({ severity }) => severity === 'wrong').map(({ at, message }) =>
    found(sheet, { at }, /^The standard was due|expected no more than the standard’s capacity/.test(message) ? 'standard' : 'sheet', message));
}

/** The cells of the job in which the steps after signing are noted. */
function filledLater(sheets: readonly ReadSheet[]): ReadonlySet<string> {
  const job = jobOf(sheets);
  return new Set((job?.items ?? []).flatMap(({ way }) => [way.certificate, way.reviewed].map(({ at }) => `${job?.sheet}!${at}`)));
}

/** One finding a cell and kind: the first. */
function distinct(findings: readonly ReviewFinding[]): ReviewFinding[] {
  const seen = new Set<string>();
  return findings.filter(({ sheet, at, kind }) => {
    const key = `${sheet}!${at} ${kind}`;
    return seen.has(key) ? false : Boolean(seen.add(key));
  });
}
