import type { Page, Response } from 'playwright-core';
import { goTo, newPage, open, type Served, serveWorkbench, typeInto, type Watch } from './workbenchPage';

jest.setTimeout(120_000);

let served: Served;
let page: Page;
let watch: Watch;
let response: Response;

beforeAll(async () => {
  served = await serveWorkbench();
  ({ page, watch } = await newPage(served));
  response = await open(page, served.url);
});

afterAll(() => served?.close());

/** How many colours a part of the screen shows, and the share of the commonest. */
async function colours(target: Page, selector: string): Promise<{ count: number; commonest: number }> {
  const picture = (await target.locator(selector).screenshot()).toString('base64');
  return target.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext('2d')!;
    context.drawImage(image, 0, 0);
    const pixels = new Uint32Array(context.getImageData(0, 0, image.width, image.height).data.buffer);
    const counts = new Map<number, number>();
    for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
    return { count: counts.size, commonest: Math.max(...counts.values()) / pixels.length };
  }, picture);
}

function scrollsSideways(target: Page): Promise<boolean> {
  return target.evaluate(() => document.documentElement.scrollWidth > document.documentElement.clientWidth);
}

test('the page allows nothing but its own files, inline styles and pictures in them', () => {
  const policy = response.headers()['content-security-policy'].split('; ');
  expect(policy).toEqual(expect.arrayContaining([
    "default-src 'self'", "style-src 'self' 'unsafe-inline'", "img-src 'self' data:", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'",
  ]));
  // WebAssembly writes the .xlsx files; no text becomes a script.
  const others = policy.filter((part) => part !== "script-src 'self' 'wasm-unsafe-eval'");
  expect(others).toHaveLength(policy.length - 1);
  expect(others.filter((part) => /unsafe-eval|https?:|\*|^script-src/.test(part))).toEqual([]);
  expect(response.headers()['x-content-type-options']).toBe('nosniff');
});

test('scripts and styles come with their own content types', async () => {
  for (const [pattern, type] of [[/\.js$/, 'text/javascript'], [/\.css$/, 'text/css']] as const) {
    const address = watch.requests.find((request) => pattern.test(request))!;
    expect((await page.request.get(address)).headers()['content-type']).toContain(type);
  }
});

test('a file that is not there is answered with 404 and the same policy', async () => {
  const missing = await page.request.get(`${served.url}nothing-here`);
  expect(missing.status()).toBe(404);
  expect(missing.headers()['content-security-policy']).toContain("default-src 'self'");
});

test('the grid paints text, lines and washes, not an empty area', async () => {
  const { count, commonest } = await colours(page, '#grid');
  expect(count).toBeGreaterThan(60);
  expect(commonest).toBeLessThan(0.97);
});

test('header buttons are reached by keyboard, and the side pane is closed and opened with one', async () => {
  await page.locator('.bar h1').click();
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('save-button');
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('first-button');
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('pane-button');
  await page.keyboard.press('Enter');
  expect(await page.locator('#pane').isVisible()).toBe(false);
  expect(await page.locator('#pane-button').getAttribute('aria-expanded')).toBe('false');
  await page.keyboard.press('Enter');
  expect(await page.locator('#pane').isVisible()).toBe(true);
});

test('the dialog keeps the focus, starts on Cancel, and Escape gives it back to its button', async () => {
  await page.locator('#first-button').focus();
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Open the first workbook again?' });
  await dialog.waitFor({ state: 'visible' });
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Cancel');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.querySelector('#grid')?.contains(document.activeElement))).toBe(false);
  await page.keyboard.press('Escape');
  expect(await dialog.isVisible()).toBe(false);
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('first-button');
});

test('the selected cell is said to screen readers with its value', async () => {
  await typeInto(page, 'N3', '12.5');
  await goTo(page, 'N3');
  expect(await page.locator('#cell-words').textContent()).toBe('N3, 12.5');
});

describe.each([320, 400])('in a window %i pixels wide', (width) => {
  let narrow: Page;

  beforeAll(async () => {
    ({ page: narrow } = await newPage(served, { width, height: 640 }));
    await open(narrow, served.url);
  });

  afterAll(() => narrow.context().close());

  test('nothing of the page lies outside, and the grid has most of the room', async () => {
    expect(await scrollsSideways(narrow)).toBe(false);
    for (const selector of ['#first-button', '#pane-button', '#saved', '#strip']) {
      const box = (await narrow.locator(selector).boundingBox())!;
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(width);
    }
    expect((await narrow.locator('#grid').boundingBox())!.height).toBeGreaterThan(640 * 0.6);
  });

  test('the side pane is a drawer that opens over the grid and closes with Escape', async () => {
    expect(await narrow.locator('#pane').isVisible()).toBe(false);
    const before = await narrow.locator('#grid').boundingBox();
    await narrow.click('#pane-button');
    const drawer = (await narrow.locator('#pane').boundingBox())!;
    expect(drawer.x).toBeGreaterThanOrEqual(0);
    expect(drawer.x + drawer.width).toBeLessThanOrEqual(width);
    expect(await narrow.locator('#grid').boundingBox()).toEqual(before);
    await narrow.locator('#pane input').first().focus();
    await narrow.keyboard.press('Escape');
    expect(await narrow.locator('#pane').isVisible()).toBe(false);
    expect(await narrow.evaluate(() => document.activeElement?.id)).toBe('pane-button');
  });
});

test('the dark theme paints page and grid dark', async () => {
  const { page: dark } = await newPage(served, { dark: true });
  await open(dark, served.url);
  const picture = (await dark.screenshot()).toString('base64');
  const lightness = await dark.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d')!;
    context.drawImage(image, 0, 0);
    const pixels = context.getImageData(0, 0, image.width, image.height).data;
    return pixels.reduce((sum, value, index) => (index % 4 === 3 ? sum : sum + value), 0) / (pixels.length * 0.75);
  }, picture);
  expect(lightness).toBeLessThan(80);
  await dark.context().close();
});

test('nothing fails on the way', () => {
  expect(watch.faults).toEqual([]);
});
