import type { Missing } from '../job/job';
import { standardOf } from '../job/readJob';
import type { SheetPlan } from '../plan';
import { address } from '../planBuilder';
import { asFoundSection } from './asFoundSection';
import { certificateDesk, USUAL_WIDTH } from './certificateDesk';
import { certificateEnd } from './certificateEnd';
import { certificateHead } from './certificateHead';
import { CertifiedRun } from './certifiedRun';
import { characteristics } from './characteristics';
import { curveSection } from './curveSection';
import { type CertificateSources, missingForCertificate } from './missing';
import { resultTables, widthOf } from './resultTables';
import { decisionSection, uncertaintySection } from './uncertaintySection';

/** What a certificate is planned from. */
export interface CertificateParts extends CertificateSources {
  readonly number: string;
  /** Name of the sheet to be. */
  readonly name: string;
  /** Day of issue, as a spreadsheet counts days; left to be typed if omitted. */
  readonly issued?: number;
  /** Name and function of who authorises it; a line to write on if omitted. */
  readonly authorised?: string;
}

/** A certificate, or what is missing before there can be one. */
export interface PlannedCertificate {
  readonly missing: readonly Missing[];
  readonly plan?: SheetPlan;
}

/**
 * The certificate of an item from a run that is complete: every result on it is a formula that shows a cell of the run, the job or the comparison,
 * in as many digits as its uncertainty bears. The cell of each is called `shown_<id>`, where the run has `value_<id>`, or a column `<id>`.
 */
export function planCertificate(parts: CertificateParts): PlannedCertificate {
  const { job, item, comparison, number, name, issued } = parts;
  const missing = [...missingForCertificate(parts), ...ofItself(parts)];
  if (missing.length > 0) return { missing };
  const run = new CertifiedRun(parts.run);
  const tables = resultTables(run, comparison);
  const desk = certificateDesk(name, Math.max(USUAL_WIDTH, widthOf(tables)));
  const { sheet, width } = desk;
  let row = certificateHead(desk, { job, item, run, standard: standardOf(job, item), number, issued });
  row = tables.write(desk, row);
  const curve = row;
  row = curveSection(desk, row, run);
  row = tables.plot(desk, curve, row);
  row = characteristics(desk, row, run);
  row = asFoundSection(desk, row, job, item, comparison, run);
  row = uncertaintySection(desk, row, run);
  row = decisionSection(desk, row, job, item, run);
  const last = certificateEnd(desk, row, { job, run, number, authorised: parts.authorised }) - 1;
  sheet.put(width + 2, 1, 'note', run.name).called('certificate_run', address(width + 2, 1));
  return {
    missing,
    plan: sheet.plan(0, {
      locked: true,
      print: { area: `A1:${address(width, last)}`, landscape: false, foot: `Certificate ${number}, ${job.fields.laboratory.value ?? ''}` },
    }),
  };
}

/** What a certificate itself needs: a number, and a name that a sheet may have. */
function ofItself({ number, name, job, run }: CertificateParts): Missing[] {
  const problem = (message: string): Missing => ({ sheet: job.sheet, at: job.fields.number.at, message });
  return [
    ...(number.trim() === '' ? [problem('The certificate has no number; expected one that no other certificate has')] : []),
    ...(name === run.name || name === job.sheet || !/^[^\\/?*[\]:'\p{Cc}]{1,31}$/u.test(name) ? [problem(`The certificate’s sheet was to be called “${name}”; expected a name of its own of 1 to 31 characters without \\ / ? * [ ] : and apostrophes`)] : []),
  ];
}
