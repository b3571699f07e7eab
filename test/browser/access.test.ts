import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { addSheet, goTo, newPage, open, type Served, serveWorkbench, typeInto } from './workbenchPage';

jest.setTimeout(120_000);

const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

let served: Served;
let page: Page;

beforeAll(async () => {
  served = await serveWorkbench();
  ({ page } = await newPage(served));
  await open(page, served.url);
});

afterAll(() => served?.close());

/** What axe finds wrong with the page as it stands, but for the rules left out: rule and element. */
async function violations(target: Page, leftOut: readonly string[] = []): Promise<string[]> {
  await target.evaluate(AXE);
  return target.evaluate(async (rules) => {
    const { axe } = window as unknown as { axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } };
    const found = await axe.run({ rules: Object.fromEntries(rules.map((rule) => [rule, { enabled: false }])) });
    return found.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
  }, leftOut);
}

/** The part of the page that has the focus, by what a person would call it. */
function place(target: Page): Promise<string | undefined> {
  return target.evaluate(() => {
    const parts = { header: '.bar', toolbar: '#grid [role="toolbar"]', sheets: '#grid footer', errors: '#strip', pane: '#pane', grid: '#grid' };
    return Object.entries(parts).find(([, selector]) => document.querySelector(selector)?.contains(document.activeElement))?.[0];
  });
}

function openSheet(target: Page): Promise<string | null> {
  return target.locator('#grid [role="tab"][aria-selected="true"]').textContent();
}

describe('axe finds nothing wrong', () => {
  test('with the page as it opens', async () => {
    expect(await violations(page)).toEqual([]);
  });

  test('with an error in the selected cell, and with its own measure: an unnamed button is found', async () => {
    await typeInto(page, 'N3', '=1/0');
    await goTo(page, 'N3');
    await page.waitForSelector('#strip.has-error');
    expect(await violations(page)).toEqual([]);
    await page.evaluate(() => document.querySelector('.bar')!.append(document.createElement('button')));
    expect(await violations(page)).toEqual([expect.stringContaining('button-name')]);
    await page.evaluate(() => document.querySelector('.bar > button:last-child')!.remove());
    await page.keyboard.press('Delete');
  });

  test('with the dialog of the first workbook open', async () => {
    await page.waitForSelector('#first-button:enabled');
    await page.click('#first-button');
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
  });

  test('with a list of the toolbar open', async () => {
    await page.getByRole('button', { name: 'Horizontal alignment' }).click();
    await page.waitForSelector('[role="menu"]');
    // The grid's library draws an open menu at the end of the document, so that nothing cuts it off: outside every landmark.
    expect(await violations(page, ['region'])).toEqual([]);
    await page.keyboard.press('Escape');
  });

  test('in the dark, and narrow with the side pane open as a drawer', async () => {
    const { page: narrow } = await newPage(served, { width: 400, height: 700, dark: true });
    await open(narrow, served.url);
    expect(await violations(narrow)).toEqual([]);
    await narrow.click('#pane-button');
    expect(await violations(narrow)).toEqual([]);
    await narrow.context().close();
  });
});

describe('by keyboard', () => {
  test('F6 goes from header to toolbar, cells, sheets, error line and side pane, and Shift+F6 back', async () => {
    await typeInto(page, 'N3', '=1/0');
    await page.waitForSelector('#strip.has-error button');
    const way: (string | undefined)[] = [await place(page)];
    for (let press = 0; press < 6; press += 1) {
      await page.keyboard.press('F6');
      way.push(await place(page));
    }
    expect(way).toEqual(['grid', 'sheets', 'errors', 'pane', 'header', 'toolbar', 'grid']);
    await page.keyboard.press('Shift+F6');
    expect(await place(page)).toBe('toolbar');
  });

  test.each(['Alt', 'Control'])('%s+PageDown and PageUp open the next sheet and the one before, and stop at the ends', async (held) => {
    const names = await page.evaluate(() => window.provingsheet!.sheets());
    await goTo(page, 'A1');
    const seen: (string | null)[] = [];
    for (const key of [...names.map(() => 'PageDown'), ...names.map(() => 'PageUp')]) {
      await page.keyboard.press(`${held}+${key}`);
      seen.push(await openSheet(page));
    }
    expect(seen).toEqual([...names.slice(1), names.at(-1), ...names.slice(0, -1).reverse(), names[0]]);
    expect(await place(page)).toBe('grid');
  });

  test('among the tabs, the arrow keys open sheets and Enter goes to the cells', async () => {
    const names = await page.evaluate(() => window.provingsheet!.sheets());
    await goTo(page, 'A1');
    await page.keyboard.press('F6');
    await page.keyboard.press('ArrowRight');
    expect(await openSheet(page)).toBe(names[1]);
    expect(await place(page)).toBe('sheets');
    await page.keyboard.press('Enter');
    expect(await place(page)).toBe('grid');
    await page.keyboard.press('Alt+PageUp');
  });

  test('what opens a list by its role only is pressed with Enter', async () => {
    await goTo(page, 'A1');
    await page.getByRole('button', { name: 'Borders: choose' }).focus();
    await page.keyboard.press('Enter');
    await page.waitForSelector('[data-slot="popover-content"]');
    await page.keyboard.press('Escape');
  });

  test('F6 while a cell is typed into enters what was typed', async () => {
    const sheet = await addSheet(page);
    await goTo(page, 'B2');
    await page.keyboard.type('=1+1', { delay: 20 });
    await page.keyboard.press('F6');
    expect(await place(page)).toBe('sheets');
    await page.waitForFunction((name) => window.provingsheet!.valueAt(name, 'B2') === 2, sheet);
  });
});

describe('the side pane as a drawer', () => {
  let narrow: Page;

  beforeAll(async () => {
    ({ page: narrow } = await newPage(served, { width: 900, height: 700 }));
    await open(narrow, served.url);
  });

  afterAll(() => narrow.context().close());

  const isOpen = (): Promise<boolean> => narrow.locator('#pane').isVisible();

  test('takes the focus, and Tab does not reach what lies beneath', async () => {
    expect(await isOpen()).toBe(false);
    await narrow.locator('#pane-button').focus();
    await narrow.keyboard.press('Enter');
    expect(await place(narrow)).toBe('pane');
    await narrow.locator('#pane-button').focus();
    await narrow.keyboard.press('Tab');
    expect(await place(narrow)).toBe('pane');
    await narrow.keyboard.press('F6');
    expect(await place(narrow)).toBe('header');
  });

  test('closes with Escape wherever the focus is, and gives it to its button', async () => {
    await narrow.locator('#first-button').focus();
    await narrow.keyboard.press('Escape');
    expect(await isOpen()).toBe(false);
    expect(await narrow.evaluate(() => document.activeElement?.id)).toBe('pane-button');
    await narrow.locator('#grid canvas').last().click();
    expect(await place(narrow)).toBe('grid');
  });

  test('closes with a click beside it', async () => {
    await narrow.click('#pane-button');
    await narrow.mouse.click(200, 400);
    expect(await isOpen()).toBe(false);
  });
});

test.each([720, 800, 860, 920, 1000, 1100])('every sheet can be clicked in a window %i pixels wide', async (width) => {
  const { page: sized } = await newPage(served, { width, height: 700 });
  await open(sized, served.url);
  const reached = await sized.locator('#grid [role="tab"]').evaluateAll((tabs) => tabs.map((tab) => {
    const { x, y, width: wide, height } = tab.getBoundingClientRect();
    return tab.contains(document.elementFromPoint(x + wide / 2, y + height / 2));
  }));
  expect(reached).toEqual(reached.map(() => true));
  expect(reached.length).toBeGreaterThan(1);
  await sized.context().close();
});

test('a window zoomed in four times still shows rows', async () => {
  const { page: zoomed } = await newPage(served, { width: 320, height: 200 });
  await open(zoomed, served.url);
  const columnHeads = 20;
  const cells = (await zoomed.locator('#grid canvas').last().boundingBox())!;
  expect(cells.height - columnHeads).toBeGreaterThan(2 * 22);
  expect(cells.y + cells.height).toBeLessThan(200);
  await zoomed.context().close();
});

test('forced colours show which sheet is open, and the zoom slider', async () => {
  const { page: forced } = await newPage(served);
  await forced.emulateMedia({ forcedColors: 'active' });
  await open(forced, served.url);
  const washes = await forced.locator('#grid [role="tab"]').evaluateAll((tabs) => tabs.map((tab) => getComputedStyle(tab).backgroundColor));
  expect(washes.slice(1)).not.toContain(washes[0]);
  expect(await forced.locator('[data-part="zoom-rail"]').evaluate((rail) => getComputedStyle(rail).borderTopStyle)).toBe('solid');
  await forced.context().close();
});

test('a sheet name that is taken is told of with one answer, and Escape takes it too', async () => {
  const { page: own } = await newPage(served);
  await open(own, served.url);
  const [first, second] = await own.evaluate(() => window.provingsheet!.sheets());
  await own.locator('#grid [role="tab"]').nth(1).click();
  await own.locator('#grid [role="tab"]').nth(1).dblclick();
  await own.keyboard.press('Control+A');
  await own.keyboard.type(first);
  await own.keyboard.press('Enter');
  const dialog = own.getByRole('dialog', { name: 'There was a problem' });
  await dialog.waitFor({ state: 'visible' });
  expect(await dialog.getByRole('button').allTextContents()).toEqual(['OK']);
  await own.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  expect((await own.evaluate(() => window.provingsheet!.sheets()))[1]).toBe(second);
  await own.context().close();
});
