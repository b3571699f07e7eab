/**
 * npm run bench: how long a person waits, in the real page in headless Chromium, as medians of several rounds. Build the
 * workbench first (npm run build -- workbench).
 */
/* global document, performance, requestAnimationFrame, window -- in what runs in the page */
import { cpus } from 'node:os';
import { chromium } from 'playwright-core';
import { ensureBrowser } from './ensure.mjs';
import { serve } from './serve.mjs';

const ROUNDS = 9;
const TEMPLATES = ['two-point', 'five-point', 'ten-point-force'];

const executablePath = ensureBrowser();
if (!executablePath) throw new Error('No Chromium was found; set CHROMIUM to where it is');
const { server, url } = await serve({ port: 0 });
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--no-first-run'] });
try {
  console.log(`${cpus().length} × ${cpus()[0].model}, Node ${process.versions.node}; medians of ${ROUNDS} rounds, least to greatest in brackets`);
  const page = await (await browser.newContext({ viewport: { width: 1400, height: 900 } })).newPage();
  await page.goto(url);
  await page.waitForSelector('#loading', { state: 'hidden', timeout: 60_000 });
  await page.waitForFunction(() => window.provingsheet !== undefined);
  for (const template of TEMPLATES) {
    const times = [];
    for (let round = 0; round < ROUNDS; round += 1) times.push(await timeOfBuilding(page, template));
    report(`from the click to the finished, painted sheet of ${template}`, times);
  }
} finally {
  await browser.close();
  server.close();
}

/** Milliseconds from the click on Build to the sheet computed and painted; the sheet is removed afterwards. */
async function timeOfBuilding(page, template) {
  await page.locator(`[data-template="${template}"]`).click();
  const button = page.getByRole('button', { name: 'Build the sheet' });
  await button.waitFor();
  const time = await button.evaluate(async (pressed) => {
    const frame = () => new Promise((resolve) => { requestAnimationFrame(resolve); });
    const start = performance.now();
    pressed.click();
    while (!document.querySelector('.rp-built')) await frame();
    await frame();
    await frame();
    return performance.now() - start;
  });
  await page.getByRole('button', { name: 'All templates' }).click();
  await page.evaluate(async () => window.provingsheet.host.remove(await window.provingsheet.host.active()));
  return time;
}

function report(what, times) {
  const sorted = [...times].sort((a, b) => a - b);
  const milliseconds = (value) => `${Math.round(value)} ms`;
  console.log(`${what}: ${milliseconds(sorted[Math.floor(sorted.length / 2)])} (${milliseconds(sorted[0])} to ${milliseconds(sorted.at(-1))})`);
}
