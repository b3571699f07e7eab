/** The review: silent on sound workbooks, and finding seeded faults, each at its cell. */
import { issueCopy } from '../../src/hosts/file/issueCopy';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import { rebuilt } from '../../src/review/rebuilt';
import { review } from '../../src/review/review';
import type { FindingKind } from '../../src/review/reviewFinding';
import { ReviewedSheet } from '../../src/review/reviewedSheet';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { jobOf } from '../../src/worksheets/job/readJob';
import { builtInTemplates } from '../../src/worksheets/library';
import type { SheetPlan } from '../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import type { ReadSheet } from '../../src/worksheets/readSheet';
import { readySheets } from '../../src/worksheets/readySheets';
import { planRecord } from '../../src/worksheets/record/planRecord';
import { beside, cellOf, changed, LiveWorkbook, stale, typed, valueAt } from '../review/workbooks';
import { certifiedJob, type JobToCertify } from '../worksheets/certificate/certifiedJobs';

jest.setTimeout(300_000);

const TODAY = 46_360;
const SIGNATURE = { by: 'A. Nother (invented)', on: 46_354, version: 'test' };

/** A workbook as plans, as read from the grid's engine, from a file, and from its issue copy. */
interface Sample {
  readonly live: LiveWorkbook;
  readonly sheets: ReadSheet[];
  readonly file: ReadSheet[];
  readonly issued: ReadSheet[];
}

async function sampleOf(plans: readonly SheetPlan[]): Promise<Sample> {
  const live = await LiveWorkbook.of(plans);
  const bytes = await writeWorkbook(plans.map((plan) => ({ plan, values: live.values(plan.name) })));
  return { live, sheets: await live.read(), file: readWorkbook(bytes) as ReadSheet[], issued: readWorkbook(issueCopy(bytes)) as ReadSheet[] };
}

/** A whole job of one item, signed if asked. */
async function jobOfItem(of: JobToCertify, signed: boolean): Promise<Sample> {
  const { plans, sheets, certificate } = await certifiedJob(of);
  expect(certificate.missing).toEqual([]);
  return sampleOf(signed ? [...plans, planRecord(sheets, SIGNATURE)] : plans);
}

function templated(id: string, answers: Answers = {}): SheetPlan {
  const template = builtInTemplates().find((one) => one.id === id)!;
  const { plan, problems } = planSheet(template, { ...suggestedAnswers(template), ...answers });
  if (!plan) throw new Error(problems.map(({ message }) => message).join());
  return withInventedReadings(plan);
}

function findingsOf(sheets: readonly ReadSheet[]): string[] {
  return review(sheets, { today: TODAY }).findings.map(({ sheet, at, kind, message }) => `${kind} ${sheet}!${at}: ${message}`);
}

describe('sound workbooks give no finding, read from the grid and from a file, and their plans are found again', () => {
  const variants: readonly (readonly [string, SheetPlan])[] = [
    ['ten points, corrected to the reference temperature', templated('ten-point-force', { corrected: 'yes' })],
    ['ten points, net of the mean of both zeros, degree 4', templated('ten-point-force', { zero: 'average', degree: '4' })],
    ['torque, zero between, three directions’ worth of runs', templated('ten-point-torque', { zero: 'interpolated', directions: 'clockwise, counter-clockwise', runs: '2', positions: '' })],
    ['own points by dead weights, with a data sheet', templated('custom-points', { applied: 'weights', teds: 'yes' })],
    ['five points in pounds, without rated output', templated('five-point', { unit: 'lbf', capacity: '5000', rated_output: '', points: '0, 25, 50, 75, 100, 50, 0' })],
    ['ISO 376 with increasing forces only', templated('iso-376', { use: 'increasing only', direction: 'tension', degree: '2', equation: 'quadratic' })],
    ['a system in both directions, three runs', templated('system', { directions: 'tension, compression', runs: '3' })],
  ];
  const all: readonly (readonly [string, SheetPlan])[] = [
    ...readySheets().map(({ id, filled }) => [id, filled] as const), ...readySheets().map(({ id, empty }) => [`${id}, empty`, empty] as const), ...variants,
  ];
  test.each(all)('%s', async (_, plan) => {
    const live = await LiveWorkbook.of([plan]);
    const sheets = await live.read();
    expect(findingsOf(sheets)).toEqual([]);
    expect(rebuilt(new ReviewedSheet(sheets[0]), undefined, sheets)).toBeDefined();
    const file = readWorkbook(await writeWorkbook([{ plan, values: live.values(plan.name) }])) as ReadSheet[];
    expect(findingsOf(file)).toEqual([]);
  });
});

const JOBS: readonly (readonly [string, JobToCertify])[] = [
  ['five points, adjusted', { template: 'five-point', adjusted: true }], ['ten points, nothing adjusted', { template: 'ten-point-force' }],
  ['ISO 376', { template: 'iso-376' }], ['a system', { template: 'system', answers: { output_unit: 'kN', resolution: '0.001' } }],
  ['two points, adjusted', { template: 'two-point', adjusted: true }],
];

test.each(JOBS)('a whole job, signed, gives no finding: from the grid, from a file, as an issue copy: %s', async (_, of) => {
  const { sheets, file, issued } = await jobOfItem(of, true);
  for (const read of [sheets, file, issued]) expect(findingsOf(read)).toEqual([]);
  expect(review(issued)).toMatchObject({ record: 'as signed', agreeing: review(sheets).recomputed });
  const job = jobOf(sheets);
  expect(sheets.filter((sheet) => !sheet.name.startsWith('Record') && !rebuilt(new ReviewedSheet(sheet), job, sheets))).toEqual([]);
});
