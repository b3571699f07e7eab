import type { Page } from 'playwright-core';
import { addSheet, goTo, newPage, open, type Served, serveWorkbench, typeInto, waitForValue, type Watch } from './workbenchPage';

jest.setTimeout(120_000);

let served: Served;
let page: Page;
let watch: Watch;

beforeAll(async () => {
  served = await serveWorkbench();
  ({ page, watch } = await newPage(served));
  await open(page, served.url);
});

afterAll(() => served?.close());

function tab(name: string): ReturnType<Page['locator']> {
  return page.locator('[data-u-comp="slide-tab-item"]').filter({ hasText: new RegExp(`^${name}$`) });
}

async function show(name: string): Promise<void> {
  await tab(name).click();
  await page.waitForFunction((wanted) => document.querySelector('[data-u-comp="slide-tab-item"][aria-selected="true"]')?.textContent === wanted, name, { timeout: 5000 });
}

async function sheets(): Promise<string[]> {
  return page.evaluate(() => window.provingsheet!.sheets());
}

test('a sheet that was renamed quickly is opened by its tab', async () => {
  await show('Five-point run');
  await tab('Five-point run').dblclick();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('Run 5');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => window.provingsheet!.sheets().includes('Run 5'));
  await page.waitForTimeout(600); // by then a tab taken for dragged would have left the bar
  await show('Start');
  await show('Run 5');
  expect(await sheets()).toEqual(['Start', 'Load cell study', 'Run 5']);
});

describe('a sheet that others refer to', () => {
  let removed: string;

  beforeAll(async () => {
    removed = await addSheet(page);
    await typeInto(page, 'A1', '7');
    await show('Start');
    await typeInto(page, 'K1', `=${removed}!A1`);
    await waitForValue(page, 'Start', 'K1', 7);
    await show(removed);
  });

  test('is deleted after a question that says what becomes of the formulas', async () => {
    await tab(removed).click({ button: 'right' });
    await page.getByText('Delete', { exact: true }).last().click();
    await page.getByText('Formulas on other sheets that refer to it will show #REF!').waitFor();
    await page.getByRole('button', { name: 'OK' }).click();
    await waitForValue(page, 'Start', 'K1', '#REF!');
    expect(await sheets()).not.toContain(removed);
  });

  test('comes back with one undo, and the formulas with it', async () => {
    await goTo(page, 'M9');
    await page.keyboard.press('Control+z');
    await waitForValue(page, 'Start', 'K1', 7);
    expect(await sheets()).toContain(removed);
  });
});

test('nothing fails on the way', () => {
  expect(watch.faults).toEqual([]);
});
