/** Saving the workbook from the header of the page: the file that the browser downloads holds what the grid shows. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import type { SheetPlan } from '../../src/worksheets/plan';
import { goTo, newPage, open, type Served, serveWorkbench, typeInto, waitForValue, type Watch } from './workbenchPage';

jest.setTimeout(240_000);

const JOB: SheetPlan = {
  name: 'Job', columns: [14, 14],
  cells: [{ at: 'A1', role: 'label', value: 'Number' }, { at: 'B1', role: 'input', value: 'B/2026:7' }, { at: 'B2', role: 'input', value: 4 }, { at: 'B3', role: 'result', formula: '=B2*2' }],
  names: [{ name: 'job_number', range: 'B1' }],
  locked: true,
};

let served: Served;
let page: Page;
let watch: Watch;

beforeAll(async () => {
  served = await serveWorkbench();
  ({ page, watch } = await newPage(served));
  await open(page, served.url);
});

afterAll(() => served?.close());

async function download(act: () => Promise<void>): Promise<{ name: string; bytes: Uint8Array }> {
  const [file] = await Promise.all([page.waitForEvent('download', { timeout: 120_000 }), act()]);
  return { name: file.suggestedFilename(), bytes: readFileSync(await file.path()) };
}

const pressSave = () => page.getByRole('button', { name: 'Save as .xlsx' }).click();

test('the file is called by the first sheet and holds every sheet of the page, cell for cell', async () => {
  const { name, bytes } = await download(pressSave);
  expect(name).toBe('Start.xlsx');
  await page.locator('#notice').getByText('“Start.xlsx” is in your browser’s downloads.').waitFor();
  const read = readWorkbook(bytes);
  expect(read.map((sheet) => sheet.name)).toEqual(await page.evaluate(() => window.provingsheet!.sheets()));
  for (const sheet of read) {
    const { cells } = await page.evaluate((of) => window.provingsheet!.host.read(of), sheet.name);
    const told = (list: readonly { at: string; value: unknown; formula?: string; format?: string }[]) =>
      list.filter(({ value, formula }) => value !== '' || formula !== undefined).map(({ at, value, formula, format }) => ({ at, value, formula, format }));
    expect(told(sheet.cells)).toEqual(told(cells));
  }
  expect(read.flatMap(({ cells }) => cells).filter(({ formula }) => formula?.includes('PROVE.')).length).toBeGreaterThan(10);
});

test('a job gives the file its number; what was typed last is in it, though its cell was still open', async () => {
  await page.evaluate((plan) => window.provingsheet!.host.write(plan), JOB);
  await typeInto(page, 'B2', '9');
  await waitForValue(page, 'Job', 'B3', 18);
  await goTo(page, 'B2');
  await page.keyboard.type('21', { delay: 20 });
  const { name, bytes } = await download(pressSave);
  expect(name).toBe('B-2026-7.xlsx');
  expect(readWorkbook(bytes).at(-1)?.cells.filter(({ at }) => /B[23]/.test(at)).map(({ value }) => value)).toEqual([21, 42]);
});

test('a formula that a file cannot hold is named, nothing is downloaded, and the work stays', async () => {
  await page.evaluate(() => window.provingsheet!.host.write({ name: 'Mine', columns: [10], cells: [{ at: 'B2', role: 'result', formula: '=NOSUCH(1)' }] }));
  await pressSave();
  await page.locator('#notice').getByText("The workbook could not be saved as a file: 'Mine'!B2: found #NAME?").waitFor();
  expect(await page.evaluate(() => window.provingsheet!.sheets())).toContain('Mine');
  await page.evaluate(() => window.provingsheet!.host.remove('Mine'));
  const { name } = await download(() => page.locator('#notice').getByRole('button', { name: 'Try again' }).click());
  expect(name).toBe('B-2026-7.xlsx');
});

test('nothing fails on the way, and nothing is asked for elsewhere', () => {
  expect(watch.faults).toEqual([]);
  expect(watch.requests.filter((address) => !address.startsWith(served.url) && !/^(data|blob):/.test(address))).toEqual([]);
});
