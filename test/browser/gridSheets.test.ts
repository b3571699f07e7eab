import type { Page } from 'playwright-core';
import { HIGHLIGHT_LOOKS, RED } from '../../src/hosts/roleLooks';
import type { SheetPlan } from '../../src/worksheets/plan';
import { plan as sample } from '../hosts/samplePlan';
import { goTo, newPage, open, ready, saved, type Served, serveWorkbench, typeInto, valueAt, waitForValue, type Watch } from './workbenchPage';

jest.setTimeout(180_000);

/** The sample, with results that differ from row to row as a run's do. */
const PLAN: SheetPlan = {
  ...sample,
  cells: sample.cells.map((cell) => (/^B[5-9]$/.test(cell.at) ? { at: cell.at, role: 'result', formula: `=(A${cell.at[1]}-10)/40000`, format: '0.000%' } : cell)),
};

let served: Served;
let page: Page;
let watch: Watch;

beforeAll(async () => {
  served = await serveWorkbench();
  ({ page, watch } = await newPage(served));
  await open(page, served.url);
  await page.evaluate((plan) => window.provingsheet!.host.write(plan), PLAN);
});

afterAll(() => served?.close());

async function sheets(): Promise<string[]> {
  return page.evaluate(() => window.provingsheet!.sheets());
}

function notice(): ReturnType<Page['locator']> {
  return page.locator('#notice');
}

function refusalDialog(message: string): ReturnType<Page['locator']> {
  return page.getByRole('dialog').filter({ hasText: message });
}

/** How many dots of the grid have each of some colours. */
async function dots(colors: readonly string[]): Promise<number[]> {
  const picture = (await page.locator('#grid').screenshot()).toString('base64');
  return page.evaluate(async ([source, wanted]) => {
    const image = new Image();
    image.src = `data:image/png;base64,${source as string}`;
    await image.decode();
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    const counts = new Map<number, number>();
    for (let i = 0; i < data.length; i += 4) {
      const color = (data[i] << 16) + (data[i + 1] << 8) + data[i + 2];
      counts.set(color, (counts.get(color) ?? 0) + 1);
    }
    return (wanted as string[]).map((color) => counts.get(Number.parseInt(color.slice(1), 16)) ?? 0);
  }, [picture, colors] as const);
}

test('a written plan is the last sheet, shown and computed, with its spilled and named cells', async () => {
  expect((await sheets()).at(-1)).toBe(PLAN.name);
  expect(await page.evaluate(() => window.provingsheet!.host.active())).toBe(PLAN.name);
  expect(await valueAt(page, PLAN.name, 'B9')).toBeCloseTo(0.00025, 12);
  const { names, merges, cells } = await page.evaluate((name) => window.provingsheet!.host.read(name), PLAN.name);
  expect(names).toEqual(PLAN.names);
  expect(merges).toEqual(PLAN.merges);
  expect(cells.find(({ at }) => at === 'D9')).toEqual({ at: 'D9', value: 'TRUE', formula: '=IF(A6<0,"FALSE","TRUE")' });
});

test('highlights have their colours where their condition holds', async () => {
  const [pass, fail] = await dots([HIGHLIGHT_LOOKS.pass.fill, HIGHLIGHT_LOOKS.fail.fill]);
  // B6 to B8 pass, B5 and B9 fail: about 95 by 20 dots a cell.
  expect(pass).toBeGreaterThan(3 * 1000);
  expect(fail).toBeGreaterThan(2 * 1000);
  expect(fail).toBeLessThan(pass);
});

test('the chart is drawn with its points and its limit, and follows edits', async () => {
  const colors = ['#3b4d8f', RED];
  const [points, limit] = await dots(colors);
  expect(points).toBeGreaterThan(50);
  expect(limit).toBeGreaterThan(50);
  const before = await page.locator('#grid').screenshot();
  await typeInto(page, 'A6', '7');
  await waitForValue(page, PLAN.name, 'B6', -3 / 40000);
  await page.waitForTimeout(300);
  expect((await page.locator('#grid').screenshot()).equals(before)).toBe(false);
});

describe('an entry that a validation does not allow', () => {
  test.each([
    ['A7', '-5', 'A force of 0 or more', 10],
    ['A7', 'ten', 'A force of 0 or more', 10],
    ['B12', '2.5', 'A whole number from 1 to 9.', true],
    ['C12', 'sideways', 'Choose a direction.', undefined],
    ['E12', 'soon', 'A date.', 46351],
  ])('is refused in %s: %s', async (cell, text, message, before) => {
    await typeInto(page, cell, text);
    await refusalDialog(message).waitFor();
    await page.getByRole('button', { name: 'OK' }).click();
    await refusalDialog(message).waitFor({ state: 'hidden' });
    await waitForValue(page, PLAN.name, cell, before as number);
  });

  test.each([['A7', '12.5', 12.5], ['C12', 'tension', 'tension'], ['B12', '3', 3], ['E12', '2026-11-30', 46356]])('is taken in %s if it is allowed: %s', async (cell, text, expected) => {
    await typeInto(page, cell, text);
    await waitForValue(page, PLAN.name, cell, expected);
  });

  test('leaves the cell free to be cleared', async () => {
    await goTo(page, 'A8');
    await page.keyboard.press('Delete');
    await page.waitForFunction((name) => window.provingsheet!.valueAt(name, 'A8') === undefined, PLAN.name);
    await typeInto(page, 'A8', '15');
    await waitForValue(page, PLAN.name, 'A8', 15);
  });
});

describe('a locked sheet', () => {
  test('refuses typing outside the inputs, and names the cell', async () => {
    await goTo(page, 'D5');
    await page.keyboard.type('9', { delay: 20 });
    await notice().getByText('D5 is locked').waitFor();
    await page.keyboard.press('Enter');
    expect(await page.evaluate((name) => window.provingsheet!.formulaAt(name, 'D5'), PLAN.name)).toBe('=A6+0.1');
  });

  test('refuses clearing results', async () => {
    await goTo(page, 'E7');
    await page.keyboard.press('Delete');
    await notice().getByText('E7 is locked').waitFor();
    expect(await page.evaluate((name) => window.provingsheet!.formulaAt(name, 'E7'), PLAN.name)).toBe('=T.INV.2T(0.05,10)');
  });

  test('keeps what was written, its lock and its rules when the page is loaded anew', async () => {
    await saved(page);
    await page.reload();
    await ready(page);
    expect((await sheets()).at(-1)).toBe(PLAN.name);
    await page.waitForFunction((name) => window.provingsheet!.valueAt(name, 'B9') !== undefined, PLAN.name);
    const [pass, points, limit] = await dots([HIGHLIGHT_LOOKS.pass.fill, '#3b4d8f', RED]);
    expect(Math.min(pass, points, limit)).toBeGreaterThan(50);
    await typeInto(page, 'A7', '-5');
    await refusalDialog('A force of 0 or more').waitFor();
    await page.getByRole('button', { name: 'OK' }).click();
    await goTo(page, 'D5');
    await page.keyboard.type('9', { delay: 20 });
    await notice().getByText('D5 is locked').waitFor();
    expect((await page.evaluate((name) => window.provingsheet!.host.read(name), PLAN.name)).names).toEqual(PLAN.names);
  });

  test('is unlocked from the refusal, and locked again by undo', async () => {
    await notice().getByRole('button', { name: 'Unlock this sheet' }).click();
    await typeInto(page, 'D8', '9');
    await waitForValue(page, PLAN.name, 'D8', 9);
    await goTo(page, 'D8');
    await page.keyboard.press('Control+z');
    await page.waitForFunction((name) => window.provingsheet!.formulaAt(name, 'D8') !== undefined, PLAN.name);
    await page.keyboard.press('Control+z');
    await page.keyboard.type('9', { delay: 20 });
    await notice().getByText('D8 is locked').waitFor();
  });
});

describe('writing', () => {
  const small: SheetPlan = {
    name: 'Small',
    columns: [10],
    cells: [{ at: 'A1', role: 'input', value: 4 }, { at: 'B1', role: 'result', formula: '=SUM(all)' }],
    names: [{ name: 'all', range: 'A1' }],
  };

  test('is one step for undo and redo, also where it replaced a sheet', async () => {
    await page.evaluate((plan) => window.provingsheet!.host.write(plan), small);
    await page.evaluate((plan) => window.provingsheet!.host.write(plan, { replace: true }), { ...small, cells: [{ at: 'A1', role: 'input' as const, value: 40 }, small.cells[1]] });
    await waitForValue(page, 'Small', 'B1', 40);
    await goTo(page, 'A1');
    await page.keyboard.press('Control+z');
    await waitForValue(page, 'Small', 'B1', 4);
    await page.keyboard.press('Control+z');
    await page.waitForFunction(() => !window.provingsheet!.sheets().includes('Small'));
    await page.keyboard.press('Control+y');
    await waitForValue(page, 'Small', 'B1', 4);
    expect((await page.evaluate(() => window.provingsheet!.host.read('Small'))).names).toEqual(small.names);
  });

  test('leaves a sheet with content alone', async () => {
    const message = await page.evaluate((plan) => window.provingsheet!.host.write(plan).then(() => '', (error: Error) => error.message), small);
    expect(message).toContain('“Small” already holds something');
  });
});

test('nothing fails on the way, and nothing is asked for elsewhere', () => {
  expect(watch.faults).toEqual([]);
  expect(watch.requests.filter((address) => !address.startsWith(served.url) && !address.startsWith('data:'))).toEqual([]);
});
