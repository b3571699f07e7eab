/**
 * npm run screenshots: takes the pictures of the README from the real page, in headless Chromium.
 * Writes docs/images/workbench-*.png. Build the workbench first (npm run build -- workbench).
 */
/* global window, document -- in what runs in the page */
import { copyFileSync, existsSync, mkdirSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { pathToFileURL } from 'node:url';
import { ensureBrowser, root, run } from './ensure.mjs';
import { serve } from './serve.mjs';

const folder = path.join(root, 'docs', 'images');
/** How far a sheet is searched for a cell to show, from A1. */
const LAST_ROW = 120;
const COLUMNS = 'ABCDEFGHIJKLMNOP';
/** Where the picture of the function list is taken, on the last sheet. */
const FREE_CELL = 'H22';

const executablePath = ensureBrowser();
if (!executablePath) throw new Error('No Chromium was found; set CHROMIUM to where it is');
mkdirSync(folder, { recursive: true });
run('npx', ['webpack', '--env', 'only=workbooks']);
const { readyWorkbooks } = await import(pathToFileURL(path.join(root, 'build', 'workbooks.mjs')).href);
const { server, url } = await serve({ port: 0 });
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--no-first-run'] });

try {
  const page = await openPage({ width: 1400, height: 900 });
  const sheets = await page.evaluate(() => window.provingsheet.sheets());
  for (const sheet of sheets) {
    await showSheet(page, sheet);
    const cell = await firstCell(page, sheet, /PROVE\./);
    if (cell) await goTo(page, cell);
    await shoot(page, sheet.toLowerCase().replace(/[^a-z0-9]+/g, '-'));
  }
  await showRun(page);
  await showAutocomplete(page, sheets.at(-1));
  await showError(page, sheets.at(-1));
  await page.context().close();

  const narrow = await openPage({ width: 400, height: 800 });
  await shoot(narrow, 'narrow');
  await narrow.context().close();

  const dark = await openPage({ width: 1400, height: 900 }, 'dark');
  await showSheet(dark, sheets.at(-1));
  await goTo(dark, await firstCell(dark, sheets.at(-1), /PROVE\./));
  await shoot(dark, 'dark');
  takeJob();
} finally {
  await browser.close();
  server.close();
}

async function openPage(viewport, colorScheme = 'light') {
  const context = await browser.newContext({ viewport, colorScheme, locale: 'en-GB', reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForSelector('#loading', { state: 'hidden', timeout: 60_000 });
  await page.waitForFunction(() => window.provingsheet !== undefined);
  return page;
}

async function showSheet(page, sheet) {
  await page.locator('[data-u-comp="slide-tab-item"]').getByText(sheet, { exact: true }).click();
}

async function goTo(page, address) {
  const box = page.locator('[data-u-comp="defined-name"] input');
  await box.fill(address);
  await box.press('Enter');
  await page.waitForFunction((cell) => document.querySelector('#cell-words').textContent.startsWith(`${cell},`), address);
}

/** The first cell of a sheet, row by row, whose formula matches. */
function firstCell(page, sheet, pattern) {
  return page.evaluate(([name, columns, rows, source]) => {
    const wanted = new RegExp(source);
    for (let row = 1; row <= rows; row += 1) {
      for (const column of columns) if (wanted.test(window.provingsheet.formulaAt(name, `${column}${row}`) ?? '')) return `${column}${row}`;
    }
    return undefined;
  }, [sheet, COLUMNS, LAST_ROW, pattern.source]);
}

/** A ten-point run with invented readings, and its plot beside it. */
async function showRun(page) {
  const { plans: [plan] } = readyWorkbooks().find(({ file }) => file === 'ten-point-force.xlsx');
  await page.evaluate((own) => window.provingsheet.host.write(own), plan);
  await page.setViewportSize({ width: 1400, height: 1480 });
  await goTo(page, 'C24');
  await page.locator('#pane').getByRole('tab', { name: 'Plot' }).click();
  await page.waitForSelector('#pane canvas');
  await shoot(page, 'run');
  await page.setViewportSize({ width: 1400, height: 900 });
  await page.locator('#pane').getByRole('tab', { name: 'Help' }).click();
}

/** A function being chosen in a free cell of a sheet. */
async function showAutocomplete(page, sheet) {
  await showSheet(page, sheet);
  await goTo(page, FREE_CELL);
  if (await page.evaluate(([name, cell]) => window.provingsheet.valueAt(name, cell), [sheet, FREE_CELL])) throw new Error(`${sheet}!${FREE_CELL} is not free`);
  await page.keyboard.type('=PROVE.F', { delay: 40 });
  await page.waitForSelector('.univer-w-\\[250px\\]');
  await shoot(page, 'autocomplete');
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
}

/** Text in place of the last reading that the first function of the sheet reads. */
async function showError(page, sheet) {
  await showSheet(page, sheet);
  const cell = await firstCell(page, sheet, /PROVE\.\w+\(.*[A-Z]+\d+:[A-Z]+\d+/);
  const formula = await page.evaluate(([name, address]) => window.provingsheet.formulaAt(name, address), [sheet, cell]);
  const ranges = [...formula.matchAll(/[A-Z]+\d+:([A-Z]+\d+)/g)];
  await goTo(page, ranges[Math.min(1, ranges.length - 1)][1]);
  await page.keyboard.type('1.2x', { delay: 40 });
  await page.keyboard.press('Enter');
  await page.waitForSelector('#strip.has-error');
  await goTo(page, cell);
  await shoot(page, 'error');
}

/** The picture of a job is one of those that the browser suite takes on its way. */
function takeJob() {
  const taken = path.join(root, 'build', 'whole-job');
  const picture = existsSync(taken) && readdirSync(taken).find((file) => file.endsWith(' the certificate.png') && !file.includes('before'));
  if (picture) copyFileSync(path.join(taken, picture), path.join(folder, 'workbench-job.png'));
  console.log(picture ? 'docs/images/workbench-job.png' : 'docs/images/workbench-job.png is left as it is: npm test -- browser takes it');
}

async function shoot(page, name) {
  // The grid paints, and the text cursor settles, a moment after the last change.
  await page.waitForTimeout(700);
  await page.screenshot({ path: path.join(folder, `workbench-${name}.png`), caret: 'hide' });
  console.log(`docs/images/workbench-${name}.png`);
}
