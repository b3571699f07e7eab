/**
 * Certificates of invented jobs as LibreOffice computes and prints them. What custom functions give stands in the sheets of the job as constants; every
 * formula of a certificate is stored with a wrong value, so that what is read and printed was computed by LibreOffice.
 * With CERTIFICATES=FOLDER the printed certificates are kept there, to be looked at.
 */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { readWorkbook, type ReadSheet } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import type { CellValue } from '../../src/hosts/sheetHost';
import type { SheetPlan } from '../../src/worksheets/plan';
import { certifiedJob, type CertifiedJob, type JobToCertify, NUMBER } from '../worksheets/certificate/certifiedJobs';
import { converted, missing, timeFor } from './libreOffice';
import { type Page, pagesOf } from './pdfWords';
import { plainFormulas } from './plainFormulas';

const JOBS: readonly (readonly [file: string, job: JobToCertify])[] = [
  ['ten-point.xlsx', { template: 'ten-point-force', adjusted: true }],
  ['five-point.xlsx', { template: 'five-point', answers: { directions: 'tension, compression' }, adjusted: true }],
  ['iso-376.xlsx', { template: 'iso-376' }],
  ['system.xlsx', { template: 'system', answers: { output_unit: 'kN', resolution: '0.001' } }],
  ['two-point.xlsx', { template: 'two-point' }],
  ['torque.xlsx', { template: 'ten-point-torque', adjusted: true }],
];

/** Foot of a page: its certificate, and which page of how many. */
const FOOT = new RegExp(`Certificate ${NUMBER}, Saltmarsh Force Bench \\(invented\\) page (\\d+) of (\\d+)`);
const WRONG = /###|#NAME\?|#REF!|#VALUE!|#N\/A|Err:/;

const jobs = new Map<string, CertifiedJob>();
let read: ReadonlyMap<string, readonly ReadSheet[]>;
let printed: ReadonlyMap<string, readonly Page[]>;

const valuesOf = (job: CertifiedJob, { name }: SheetPlan) => (at: string) => job.value(name, at) as CellValue;

/** The words of a page line by line, from left to right. */
function words(page: Page): string {
  const lines: { readonly top: number; readonly words: Page['words'][number][] }[] = [];
  for (const word of [...page.words].sort((a, b) => a.top - b.top)) {
    const line = lines.find(({ top }) => Math.abs(top - word.top) < 2.5);
    if (line) line.words.push(word);
    else lines.push({ top: word.top, words: [word] });
  }
  return lines.map((line) => line.words.sort((a, b) => a.left - b.left).map(({ text }) => text).join(' ')).join(' ');
}

/** Pages of the certificate among those of its workbook. */
function certificatePages(file: string): readonly Page[] {
  return (printed.get(file) ?? []).filter((page) => FOOT.test(words(page)));
}

(missing ? describe.skip : describe)('certificates', () => {
  beforeAll(async () => {
    const files = new Map<string, Uint8Array>();
    for (const [file, told] of JOBS) {
      const job = await certifiedJob(told);
      expect(job.certificate.missing).toEqual([]);
      jobs.set(file, job);
      files.set(file, await writeWorkbook(job.plans.map((plan) => ({ plan: plainFormulas(plan, valuesOf(job, plan)), values: () => -1 }))));
    }
    read = new Map([...converted(files, 'xlsx')].map(([file, bytes]) => [file, readWorkbook(bytes)]));
    const pdfs = converted(files, 'pdf');
    printed = new Map([...pdfs].map(([file, bytes]) => [file, pagesOf(bytes)]));
    const folder = process.env.CERTIFICATES;
    if (folder) for (const [file, bytes] of pdfs) writeFileSync(path.join(folder, file.replace('.xlsx', '.pdf')), bytes);
  }, 20 * timeFor(JOBS.length));

  test.each(JOBS)('%s: LibreOffice computes every cell of the certificate as the page does', (file) => {
    const job = jobs.get(file) as CertifiedJob;
    const plan = job.certificate.plan as SheetPlan;
    const again = new Map(read.get(file)?.find(({ name }) => name === plan.name)?.cells.map((cell) => [cell.at, cell.value]));
    const unlike = plan.cells.filter(({ formula }) => formula !== undefined).flatMap(({ at }) => {
      const [own, theirs] = [job.value(plan.name, at) ?? '', again.get(at) ?? ''];
      const same = typeof own === 'number' && typeof theirs === 'number' ? Math.abs(own - theirs) <= 1e-9 * Math.max(Math.abs(own), 1e-6) : own === theirs;
      return same ? [] : [{ at, own, theirs }];
    });
    expect(unlike).toEqual([]);
  });

  test.each(JOBS)('%s: prints on two pages at most, numbered, every number whole', (file) => {
    const pages = certificatePages(file);
    expect(pages.length).toBeGreaterThan(0);
    expect(pages.length).toBeLessThanOrEqual(2);
    expect(pages.flatMap((page) => page.words.filter(({ text }) => WRONG.test(text)).map(({ text }) => text))).toEqual([]);
    expect(words(pages[0])).toContain('Calibration certificate');
    expect(words(pages[pages.length - 1])).toContain(`End of certificate ${NUMBER}.`);
  });

  test.each(JOBS)('%s: prints what is linked whole', (file) => {
    const job = jobs.get(file) as CertifiedJob;
    const plan = job.certificate.plan as SheetPlan;
    const all = certificatePages(file).map(words).join(' ').replace(/\s+/g, '');
    const texts = plan.cells.filter(({ role, at }) => ['stated', 'text', 'note', 'subtitle', 'verdict'].includes(role) && /^[A-H]\d/.test(at)).map(({ at }) => job.value(plan.name, at));
    const cut = texts.filter((text): text is string => typeof text === 'string' && text !== '').filter((text) => !all.includes(text.replace(/\s+/g, '')));
    expect(cut).toEqual([]);
  });
});
