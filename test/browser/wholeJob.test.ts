/**
 * A whole job in the real page, by mouse and keyboard, from the receipt to the issue copy; everything in it is invented. A
 * picture of every step goes to build/whole-job. The copy is then opened in LibreOffice and reviewed from the command line.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { inventedJob } from '../../src/worksheets/data/inventedJob';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { dateText } from '../../src/worksheets/check/serialDate';
import { builtInTemplates } from '../../src/worksheets/library';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import { converted, missing as noOffice } from '../office/libreOffice';
import { JobBench, logOf } from './jobBench';
import { newPage, open, ready, saved, type Served, serveWorkbench } from './workbenchPage';

jest.setTimeout(300_000);

const root = path.resolve(__dirname, '../..');
const folder = path.join(root, 'build', 'whole-job');
const [JOB, INSPECTION, FOUND, LEFT, COMPARISON, CERTIFICATE] = ['Job', 'Cell A inspection', 'Cell A as found', 'Cell A as left', 'Cell A comparison', 'Cell A certificate'];

let served: Served;
let page: Page;
let bench: JobBench;
let faults: readonly string[];

beforeAll(async () => {
  served = await serveWorkbench();
  const made = await newPage(served);
  ({ page } = made);
  ({ faults } = made.watch);
  await open(page, served.url);
  page.setDefaultTimeout(15_000);
  bench = new JobBench(page);
});

afterAll(() => served?.close());

let failed = false;

/** A step of the job: none is tried once one has failed, and a picture shows where that was. */
function step(name: string, work: () => Promise<void>): void {
  test(name, async () => {
    if (failed) throw new Error('an earlier step failed');
    failed = true;
    await work().catch(async (error: unknown) => {
      await bench.picture('failed');
      throw error;
    });
    failed = false;
  });
}

/** Loads of a ten-point run in compression, three times; 20 kN give about 2 mV/V. */
const LOADS = [0, -2, -4, -6, -8, -10, -12, -14, -16, -18, -20, 0];
const response = (zero: number, span: number) => (load: number): number => zero + (span * load) / 20 - 4e-7 * load * load;
/** As found the zero and the span are off, after an overload; as left both are right. */
const asFound = response(0.0312, 2.0041);
const asLeft = response(0.0006, 1.9999);

step('a job is started from its form', async () => {
  const tab = await bench.tab('Job');
  const answers: Answers = { ...inventedJob(), items: 'Cell A' };
  await bench.picture('before a job');
  for (const [label, text] of [
    ['Job number', answers.number], ['Laboratory', answers.laboratory], ['Customer', answers.customer], ['Tolerance', answers.tolerance], ['Least interval', answers.least_interval],
    ['Greatest interval', answers.greatest_interval], ['Items', answers.items], ['Capacity', answers.capacity], ['Resolution', answers.resolution], ['Rated output as specified', answers.rated_output],
    ['Standard used', answers.standard], ['Verified from', answers.verified_from], ['Verified up to', answers.verified_to], ['Its uncertainty, k = 2', answers.uncertainty], ['Calibrated until', answers.due],
  ] as const) await tab.getByLabel(new RegExp(`^${label}`)).fill(text);
  await tab.getByLabel(/^Class required/).selectOption('A');
  await bench.picture('the form of a job');
  await tab.getByRole('button', { name: 'Start the job' }).click();
  await bench.stepSays('received', /2 missing/);
  await bench.picture('a job begun');
  expect(await bench.sheets()).toContain(JOB);
});

step('received: what the Job sheet still lacks is typed there', async () => {
  await bench.type(JOB, {
    item_received: '2026-11-23', item_condition: 'clean, a dent in the guard', item_identification: 'Invented cell, DEMO-0017', item_direction: 'compression', item_last_calibrated: '2025-11-20',
    job_laboratory_address: 'Bay 2, Saltmarsh (invented)', job_customer_address: 'Quay 5, Tidewater (invented)', job_order: 'DEMO-PO-77', job_place: 'Invented bench, bay 2',
    job_temperature_least: '18', job_temperature_greatest: '28', standards_description: 'Dead-weight frame (invented)', standards_certificate: 'DEMO-C-204, Invented Metrology Office',
  });
  await bench.stepSays('received', /^Done/);
  await bench.picture('received');
});

step('inspected: the sheet is built with what the job says, and filled in', async () => {
  const tab = await bench.tab('Job');
  await tab.getByRole('button', { name: 'Build the receiving inspection' }).click();
  const build = page.locator('#pane').getByRole('tabpanel', { name: 'Build', exact: true });
  await bench.picture('the form of the inspection');
  await build.getByRole('button', { name: 'Build the sheet' }).click();
  await page.waitForSelector('.rp-built');
  await fillInvented('receiving-inspection', INSPECTION);
  await bench.tab('Job');
  await bench.stepSays('inspected', /^Done/);
  await bench.picture('inspected');
});

/** Types what a template's invented readings say into the open cells of a sheet that was built from it. */
async function fillInvented(id: string, sheet: string): Promise<void> {
  const template = builtInTemplates().find((one) => one.id === id)!;
  const plan = planSheet(template, suggestedAnswers(template)).plan!;
  const held = new Map((await bench.read(sheet)).cells.map((cell) => [cell.at, cell]));
  const empty = new Map(plan.cells.map((cell) => [cell.at, cell]));
  await bench.show(sheet);
  for (const { at, role, value, format } of withInventedReadings(plan).cells) {
    if (role !== 'input' || value === undefined || value === empty.get(at)?.value || held.get(at)?.formula !== undefined) continue;
    await bench.typeAt(at, format === 'yyyy-mm-dd' ? dateText(value as number) : String(value));
  }
}

step('as found: the run is built, and its readings come from a log', async () => {
  const tab = await bench.tab('Job');
  await tab.getByRole('button', { name: 'Build the as-found run' }).click();
  const build = page.locator('#pane').getByRole('tabpanel', { name: 'Build', exact: true });
  await build.getByRole('button', { name: 'Build the sheet' }).click();
  await page.waitForSelector('.rp-built');
  await bench.type(FOUND, { technician: 'A. Invented', date: '2026-11-24', temperature: '22.6', humidity: '44' });
  expect(await bench.value(FOUND, 'technician')).toBe('A. Invented');
  await fillByLog(asFound, 11, false);
  await bench.tab('Job');
  await bench.stepSays('as_found', /^Done/);
  await bench.picture('as found');
});

/** Three runs, each from a log of its own. */
async function fillByLog(of: (load: number) => number, seed: number, comma: boolean): Promise<void> {
  const tab = await bench.tab('Readings');
  for (let run = 1; run <= 3; run += 1) {
    const name = `run ${run} of seed ${seed}.csv`;
    await tab.getByLabel('File of a logger').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(logOf({ loads: LOADS, response: (load) => of(load) + run * 4e-6, seed: seed + run, noise: 8e-6, comma })) });
    await tab.getByRole('button', { name: 'Fill the readings' }).waitFor();
    await bench.picture(`a log of run ${run}`);
    await tab.getByRole('button', { name: 'Fill the readings' }).click();
    await tab.getByText(/readings filled into/).waitFor();
  }
}

step('the tab is closed in the middle: nothing is lost, neither cells nor words half typed', async () => {
  const tab = await bench.tab('Job');
  await tab.getByLabel('What was adjusted or repaired').fill('Zero and span trimmed, half a sen');
  await saved(page);
  const context = page.context();
  await page.close();
  page = await context.newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(served.url);
  await ready(page);
  bench = bench.on(page);
  const again = await bench.tab('Job');
  expect(await again.getByLabel('What was adjusted or repaired').inputValue()).toBe('Zero and span trimmed, half a sen');
  await bench.stepSays('as_found', /^Done/);
  await bench.picture('after the tab was closed');
});

step('adjusted: what was done is written down', async () => {
  const tab = await bench.tab('Job');
  await tab.getByLabel('What was adjusted or repaired').fill('Zero and span trimmed after an overload');
  await tab.getByRole('button', { name: 'Write it down' }).click();
  await bench.stepSays('adjusted', /^Done/);
});

step('as left: the run after the adjustment, from logs with a decimal comma', async () => {
  const tab = await bench.tab('Job');
  await tab.getByRole('button', { name: 'Build the as-left run' }).click();
  const build = page.locator('#pane').getByRole('tabpanel', { name: 'Build', exact: true });
  await build.getByRole('button', { name: 'Build the sheet' }).click();
  await page.waitForSelector('.rp-built');
  await bench.type(LEFT, { technician: 'A. Invented', date: '2026-11-25', temperature: '22.9', humidity: '43' });
  await fillByLog(asLeft, 21, true);
  await bench.tab('Job');
  await bench.stepSays('as_left', /^Done/);
});

step('decided: as found was outside of the tolerance, as left is within', async () => {
  const tab = await bench.tab('Job');
  await tab.getByRole('button', { name: 'Compare as found and as left' }).click();
  await tab.getByRole('button', { name: `Go to “${COMPARISON}”` }).waitFor();
  expect(await bench.value(COMPARISON, 'outcome_before')).toMatch(/^outside/);
  expect(await bench.value(COMPARISON, 'outcome_after')).toMatch(/^within/);
  await bench.show(COMPARISON);
  await bench.picture('compared');
  await tab.getByRole('button', { name: /^Confirm: within/ }).click();
  await bench.stepSays('decided', /^Done: within/);
});

step('certificate: its number and date are asked, and the sheet is built', async () => {
  const tab = await bench.tab('Job');
  await tab.getByLabel('Number of the certificate').fill('DEMO-C-2026-117');
  await bench.picture('before the certificate');
  await tab.getByRole('button', { name: 'Build the certificate' }).click();
  await bench.stepSays('certificate', /^Done/);
  await bench.show(CERTIFICATE);
  await bench.picture('the certificate');
});

step('signed, and reviewed without a finding', async () => {
  const tab = await bench.tab('Job');
  await tab.getByLabel('Signed by').fill('A. Invented');
  await tab.getByRole('button', { name: 'Sign the record' }).click();
  await page.waitForFunction(() => /as signed|signed by/i.test(document.querySelector('#job-signature-state')?.textContent ?? ''));
  await bench.picture('signed');
  const review = await bench.tab('Review');
  await review.getByText(/nothing|no finding/i).first().waitFor();
  await bench.picture('the review');
  await review.getByLabel('Reviewed by').fill('B. Invented');
  await review.getByRole('button', { name: 'Write the Review sheet' }).click();
  await review.getByText('is written').waitFor();
  await bench.picture('the Review sheet');
  await bench.tab('Job');
  await bench.stepSays('reviewed', /^Done/);
});

step('the issue copy is made, opens in LibreOffice without #NAME? and with the same numbers, and its review finds nothing', async () => {
  const tab = await bench.tab('Job');
  await bench.picture('all done');
  const download = page.waitForEvent('download');
  await tab.getByRole('button', { name: 'Make the issue copy' }).click();
  const file = await download;
  mkdirSync(folder, { recursive: true });
  const copy = path.join(folder, 'issue copy.xlsx');
  await file.saveAs(copy);
  expect(file.suggestedFilename()).toBe('Job DEMO-2026-041, issue copy.xlsx');
  await bench.picture('issued');

  const bytes = new Uint8Array(readFileSync(copy));
  const stored = readWorkbook(bytes);
  expect(stored.flatMap(({ cells }) => cells).filter(({ formula }) => formula?.includes('PROVE'))).toEqual([]);
  if (noOffice) throw new Error(noOffice);
  const opened = readWorkbook(converted(new Map([['copy.xlsx', bytes]]), 'xlsx').get('copy.xlsx')!);
  expect(opened.flatMap(({ cells }) => cells).filter(({ value }) => typeof value === 'object' && value !== null)).toEqual([]);
  for (const sheet of stored) {
    const again = new Map(opened.find(({ name }) => name === sheet.name)!.cells.map(({ at, value }) => [at, value]));
    const differ = sheet.cells.filter(({ at, value }) => typeof value === 'number' && !(Math.abs((again.get(at) as number) - value) <= 1e-9 * Math.max(1, Math.abs(value))));
    expect({ sheet: sheet.name, differ }).toEqual({ sheet: sheet.name, differ: [] });
  }
  writeFileSync(path.join(folder, 'issue copy.pdf'), converted(new Map([['copy.xlsx', bytes]]), 'pdf').get('copy.xlsx')!);

  const report = execFileSync(process.execPath, ['scripts/review.mjs', copy], { cwd: root, encoding: 'utf8' });
  expect(report).toMatch(/as signed/i);
});

test('the page did nothing that it should not do', () => {
  expect(faults).toEqual([]);
});
