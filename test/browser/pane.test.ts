import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { newPage, open, ready, type Served, serveWorkbench } from './workbenchPage';

jest.setTimeout(180_000);

const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const TABS = ['Job', 'Build', 'Readings', 'Check', 'Plot', 'Review', 'Help'] as const;

let served: Served;

beforeAll(async () => {
  served = await serveWorkbench();
});

afterAll(() => served?.close());

/** What axe finds wrong in the pane, the dialog over it included: rule and element. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(within: string): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> } };
    const found = await axe.run('#pane');
    return found.violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
  });
}

async function openTab(page: Page, label: (typeof TABS)[number]): Promise<void> {
  await page.locator('#pane').getByRole('tab', { name: label }).click();
}

function openTabs(page: Page): Promise<string[]> {
  return page.locator('#pane [role=tab][aria-selected=true]').allTextContents();
}

/** Builds the two-point sheet from the pane, which must be in sight. */
async function buildTwoPoint(page: Page): Promise<void> {
  await openTab(page, 'Build');
  await page.locator('[data-template="two-point"]').click();
  await page.getByRole('button', { name: 'Build the sheet' }).click();
  await page.waitForSelector('.rp-built');
}

/** Goes to the first reading by the finding that misses it, and types readings downwards. */
async function typeReadings(page: Page, readings: readonly string[]): Promise<void> {
  await openTab(page, 'Check');
  await page.locator('.rp-finding', { hasText: 'No readings yet' }).first().click();
  for (const reading of readings) {
    await page.keyboard.type(reading, { delay: 20 });
    await page.keyboard.press('Enter');
  }
}

/** How many different colours the marks and lines of the plot have, by its pixels. */
function inkOnPlot(page: Page): Promise<number> {
  return page.locator('.rp-stage:visible .rp-canvas canvas').evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    const colours = new Set<number>();
    for (let i = 0; i < data.length; i += 4) if (data[i + 3] === 255) colours.add((data[i] << 16) + (data[i + 1] << 8) + data[i + 2]);
    return colours.size;
  });
}

describe('from a template to checked readings', () => {
  let page: Page;
  let faults: readonly string[];

  beforeAll(async () => {
    const made = await newPage(served);
    ({ page } = made);
    ({ faults } = made.watch);
    await open(page, served.url);
  });

  afterAll(() => page.context().close());

  test('the pane opens with Build', async () => {
    expect(await openTabs(page)).toEqual(['Build']);
  });

  test('a sheet is built, shown, and told of', async () => {
    const before = await page.evaluate(() => window.provingsheet!.sheets());
    await buildTwoPoint(page);
    const after = await page.evaluate(() => window.provingsheet!.sheets());
    expect(after).toHaveLength(before.length + 1);
    expect(await page.locator('#grid [role="tab"][aria-selected="true"]').textContent()).toBe(after.at(-1));
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(`“${after.at(-1)}” is built`);
  });

  test('a plot waits for readings', async () => {
    await openTab(page, 'Plot');
    await page.getByText('Nothing to plot yet').waitFor();
  });

  test('a finding goes to its cell, and typing there changes the findings', async () => {
    await typeReadings(page, ['0.0012', '2.0013', '0.0011']);
    await page.waitForFunction(() => !document.querySelector('.rp-findings')?.textContent?.includes('No readings yet'));
  });

  test('the plot is drawn of what was typed, and an edit changes it', async () => {
    await openTab(page, 'Plot');
    await page.waitForSelector('.rp-canvas canvas');
    expect(await inkOnPlot(page)).toBeGreaterThan(2);
    const table = (): Promise<string | null> => page.locator('.rp-plot-table').first().textContent();
    const before = await table();
    await page.keyboard.press('Shift+F6');
    await page.locator('#grid canvas').last().click({ position: { x: 300, y: 300 } });
    await page.keyboard.press('Control+z');
    await page.waitForFunction((text) => document.querySelector('.rp-plot-table')?.textContent !== text, before);
    await page.keyboard.press('Control+y');
    await page.waitForFunction((text) => document.querySelector('.rp-plot-table')?.textContent === text, before);
  });

  test('arrow keys read the values of the plot', async () => {
    await page.locator('.rp-stage:visible').focus();
    await page.keyboard.press('ArrowRight');
    const first = await page.locator('.rp-reading:visible').textContent();
    await page.keyboard.press('ArrowRight');
    const second = await page.locator('.rp-reading:visible').textContent();
    expect(first).toMatch(/\d/);
    expect(second).not.toBe(first);
    expect(await page.locator('#pane .rp-stage:visible .rp-ring').isVisible()).toBe(true);
  });

  test('the pointer reads the mark it is at, and nothing where no mark is', async () => {
    const read = await page.locator('.rp-reading:visible').textContent();
    const ring = (await page.locator('#pane .rp-stage:visible .rp-ring').boundingBox())!;
    const plot = (await page.locator('.rp-stage:visible .rp-canvas .u-over').boundingBox())!;
    const [x, y] = [ring.x + ring.width / 2, ring.y + ring.height / 2];
    await page.mouse.move(plot.x + plot.width / 2, y < plot.y + plot.height / 2 ? plot.y + plot.height - 2 : plot.y + 2);
    expect(await page.locator('.rp-reading:visible').textContent()).toMatch(/^Point at a mark/);
    await page.mouse.move(x, y);
    expect(await page.locator('.rp-reading:visible').textContent()).toBe(read);
  });

  test('a sheet that holds something is not built over without asking', async () => {
    await openTab(page, 'Build');
    const before = await page.evaluate(() => window.provingsheet!.sheets());
    await page.getByRole('button', { name: 'Back to the questions' }).click();
    await page.getByRole('button', { name: 'Build the sheet' }).click();
    await page.getByRole('dialog').waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByText('Nothing is built. The sheet is as it was.').waitFor();
    expect(await page.evaluate(() => window.provingsheet!.sheets())).toEqual(before);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Build the sheet');
  });

  test('the tab in use is open after the page was left, and F6 goes to it', async () => {
    await openTab(page, 'Plot');
    await page.waitForSelector('#saved[data-state="saved"]');
    await page.reload();
    await ready(page);
    expect(await openTabs(page)).toEqual(['Plot']);
    await page.locator('#first-button').focus();
    await page.keyboard.press('Shift+F6');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('pane-tab-plot');
    await page.keyboard.press('ArrowRight');
    expect(await openTabs(page)).toEqual(['Review']);
  });

  test('nothing was refused by the policy of the page, and nothing failed', () => {
    expect(faults).toEqual([]);
  });
});

describe('a template from a file', () => {
  let page: Page;

  beforeAll(async () => {
    ({ page } = await newPage(served));
    await open(page, served.url);
  });

  afterAll(() => page.context().close());

  const choose = (name: string, text: string): Promise<void> => page.locator('#pane-panel-build input[type=file]').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

  test('that was saved from the form is loaded again, and is still there after the page was left', async () => {
    await page.locator('[data-template="two-point"]').click();
    await page.getByLabel('Capacity').fill('35');
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save this template…' }).click()]);
    const text = readFileSync(await download.path(), 'utf8');
    expect(JSON.parse(text)).toMatchObject({ item: { capacity: 35 } });
    await page.getByRole('button', { name: 'All templates' }).click();
    await choose('own.json', text.replace(/"title": "[^"]*"/, '"title": "Our own run"'));
    await page.getByText('“Our own run” is loaded.').waitFor();
    await page.reload();
    await ready(page);
    await page.locator('.rp-own .rp-template').click();
    expect(await page.getByLabel('Capacity').inputValue()).toBe('35');
    await page.getByRole('button', { name: 'All templates' }).click();
  });

  test('that is none is refused with path and expectation', async () => {
    await choose('bad.json', JSON.stringify({ kind: 'run', form: 1 }));
    await page.locator('.rp-refused').waitFor();
    expect(await page.locator('.rp-refused').innerText()).toMatch(/“bad.json” is no template[\s\S]*title: found nothing; expected/);
    expect(await violations(page)).toEqual([]);
  });
});

const LOOKS = [['light', { dark: false }, 'none'], ['dark', { dark: true }, 'none'], ['forced colours', { dark: false }, 'active']] as const;

describe.each(LOOKS)('in a window 320 pixels wide, %s', (_, options, forcedColors) => {
  let page: Page;
  const showPane = async (): Promise<void> => {
    if (!(await page.locator('#pane').isVisible())) await page.click('#pane-button');
  };

  beforeAll(async () => {
    ({ page } = await newPage(served, { width: 320, height: 640, ...options }));
    await page.emulateMedia({ forcedColors });
    await open(page, served.url);
    await showPane();
    await buildTwoPoint(page);
  });

  afterAll(() => page.context().close());

  test('going to a cell uncovers the sheet and gives it the keyboard', async () => {
    await typeReadings(page, ['0.0012', '2.0013', '0.0011']);
    expect(await page.locator('#pane').isVisible()).toBe(false);
    expect(await page.evaluate(() => document.querySelector('#grid')!.contains(document.activeElement))).toBe(true);
    await showPane();
  });

  test.each(TABS)('axe finds nothing wrong with %s, and nothing is cut off', async (label) => {
    await openTab(page, label);
    if (label === 'Plot') await page.waitForSelector('.rp-canvas canvas');
    expect(await violations(page)).toEqual([]);
    const cut = await page.locator('#pane [role=tabpanel]:not([hidden])').evaluate((panel) => {
      const scrollers = [...panel.querySelectorAll<HTMLElement>('.rp-scroll, .rp-help-scroll')];
      return scrollers.filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth).map(({ className }) => className);
    });
    expect(cut).toEqual([]);
  });

  test('axe finds nothing wrong with a form that has problems', async () => {
    await openTab(page, 'Build');
    await page.getByRole('button', { name: 'Back to the questions' }).click();
    await page.locator('#pane-panel-build').getByLabel('Capacity').fill('x');
    await page.waitForSelector('.rp-summary:not([hidden])');
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
  });
});
