import type { Job } from '../job/job';
import { readingsFingerprint } from '../record/fingerprint';
import { address } from '../planBuilder';
import { shownFrom } from './cellReference';
import { type CertificateDesk, paragraph, section, wideField } from './certificateDesk';
import type { CertifiedRun } from './certifiedRun';
import { DATE } from '../planner/frame';

/** Customary of certificates, ISO/IEC 17025:2017, 7.8.2.1 (from memory): what the results hold for, and how the certificate may be copied. */
const HOLDS = 'The results hold for the item named above, in the condition it was in and under the conditions stated, on the day of calibration. This certificate may be reproduced only in full, except with the written approval of the laboratory.';

/** What stands before the fingerprint of the readings, SHA-256 in hexadecimal. */
export const FINGERPRINT = 'Readings SHA-256 ';

/** What stands at the end of a certificate. */
export interface EndParts {
  readonly job: Job;
  readonly run: CertifiedRun;
  readonly number: string;
  /** Name and function of who authorises it; a line to write on if undefined. */
  readonly authorised: string | undefined;
}

/** Remarks, signatures, what the certificate holds for, and the fingerprint of the readings; gives the next free row. */
export function certificateEnd(desk: CertificateDesk, start: number, { job, run, number, authorised }: EndParts): number {
  const { sheet, width } = desk;
  const { remarks } = job.fields;
  let row = start;
  if (remarks.value !== undefined) {
    row = section(desk, row, 'Remarks');
    row = paragraph(desk, row, 'text', shownFrom(job.sheet, remarks.at), remarks.value);
  }
  row = section(desk, row, 'Signatures');
  const right = Math.floor(width / 2) + 1;
  const technician = run.condition('technician', 'Technician');
  const date = run.cells.cell('date');
  sheet.across(1, row, 'field', ['Calibrated by', undefined]).wide(3, row, right - 3, 'stated', technician && shownFrom(run.name, technician.at));
  sheet.across(right, row, 'field', ['Date', undefined]).wide(right + 2, row, width - right - 1, 'stated', date && shownFrom(run.name, date.at), DATE);
  row += 1;
  sheet.across(1, row, 'field', ['Authorised by', undefined]).wide(3, row, right - 3, 'stated');
  sheet.across(right, row, 'field', ['Name and function', undefined]).wide(right + 2, row, width - right - 1, 'stated', authorised).roomy(row, 2, 'stated');
  sheet.called('certificate_authorised', address(right + 2, row));
  row += 2;
  row = paragraph(desk, row, 'note', HOLDS);
  row = wideField(desk, row, { label: 'Fingerprint', content: `${FINGERPRINT}${readingsFingerprint(run.sheet)}`, called: 'certificate_fingerprint' });
  return paragraph(desk, row, 'note', `End of certificate ${number}.`);
}
