import { type ChildProcess, spawn } from 'node:child_process';
import path from 'node:path';
import { type Browser, chromium, type Page, type Response } from 'playwright-core';

const root = path.resolve(__dirname, '../..');

/** The built workbench, served as users get it, with a browser to open it in. */
export interface Served {
  readonly url: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

/** Starts scripts/serve.mjs on a free port, and Chromium. */
export async function serveWorkbench(): Promise<Served> {
  const server = spawn(process.execPath, ['scripts/serve.mjs'], { cwd: root, env: { ...process.env, PORT: '0' }, stdio: ['ignore', 'pipe', 'inherit'] });
  const url = await addressOf(server);
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--no-first-run'],
  });
  return {
    url,
    browser,
    async close() {
      await browser.close();
      server.kill('SIGTERM');
    },
  };
}

function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    server.stdout!.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const found = /http:\/\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
    server.once('exit', (code) => reject(new Error(`scripts/serve.mjs ended with exit code ${code}; said: ${said}`)));
  });
}

/** Everything a page did that it should not do. */
export interface Watch {
  /** Errors on the console, uncaught errors, failed requests. */
  readonly faults: string[];
  /** Every address asked for. */
  readonly requests: string[];
}

/** A page of its own storage, watched from its first request on. */
export async function newPage(served: Served, options: { width?: number; height?: number; dark?: boolean } = {}): Promise<{ page: Page; watch: Watch }> {
  const context = await served.browser.newContext({
    viewport: { width: options.width ?? 1400, height: options.height ?? 900 },
    colorScheme: options.dark ? 'dark' : 'light',
  });
  const page = await context.newPage();
  const watch: Watch = { faults: [], requests: [] };
  page.on('console', (message) => {
    if (message.type() === 'error') watch.faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => watch.faults.push(`uncaught: ${error.message}`));
  page.on('requestfailed', (request) => watch.faults.push(`failed: ${request.url()}`));
  page.on('request', (request) => watch.requests.push(request.url()));
  return { page, watch };
}

/** Opens the workbench and waits until its first values are on screen. */
export async function open(page: Page, url: string): Promise<Response> {
  const response = await page.goto(url);
  if (!response) throw new Error('the workbench did not answer');
  await ready(page);
  return response;
}

export async function ready(page: Page): Promise<void> {
  await page.waitForSelector('#loading', { state: 'hidden', timeout: 60_000 });
  await page.waitForFunction(() => window.provingsheet !== undefined);
}

/** Goes to a cell as a person does: by typing its address into the name box. */
export async function goTo(page: Page, address: string): Promise<void> {
  const box = page.locator('[data-u-comp="defined-name"] input');
  await box.fill(address);
  await box.press('Enter');
  await page.waitForFunction((cell) => document.querySelector('#cell-words')?.textContent?.startsWith(`${cell},`), address);
}

/** Types into a cell and leaves it with Enter. */
export async function typeInto(page: Page, address: string, text: string): Promise<void> {
  await goTo(page, address);
  await page.keyboard.type(text, { delay: 20 });
  await page.keyboard.press('Enter');
}

export function valueAt(page: Page, sheet: string, address: string): Promise<unknown> {
  return page.evaluate(([name, cell]) => window.provingsheet?.valueAt(name, cell), [sheet, address] as const);
}

/** Waits until a cell holds a value that `expected` (a function in the page's words) accepts. */
export async function waitForValue(page: Page, sheet: string, address: string, expected: number | string): Promise<void> {
  await page.waitForFunction(
    ([name, cell, wanted]) => {
      const value = window.provingsheet?.valueAt(name as string, cell as string);
      return typeof wanted === 'number' && typeof value === 'number' ? Math.abs(value - wanted) < 1e-9 : value === wanted;
    },
    [sheet, address, expected] as const,
    { timeout: 15_000 },
  );
}

/** Waits until the header says that the work is stored. */
export async function saved(page: Page): Promise<void> {
  await page.waitForSelector('#saved[data-state="saved"]');
}

/** Adds an empty sheet with the sheet bar's button and returns its name. */
export async function addSheet(page: Page): Promise<string> {
  const before = await page.evaluate(() => window.provingsheet!.sheets());
  await page.locator('[data-u-comp="sheet-bar-append-button"]').first().click();
  await page.waitForFunction((count) => window.provingsheet!.sheets().length > count, before.length);
  const after = await page.evaluate(() => window.provingsheet!.sheets());
  return after.find((name) => !before.includes(name))!;
}

/** Types values one below the other, as a person does. */
export async function typeColumn(page: Page, first: string, texts: readonly string[]): Promise<void> {
  await goTo(page, first);
  for (const text of texts) {
    await page.keyboard.type(text, { delay: 10 });
    await page.keyboard.press('Enter');
  }
}
