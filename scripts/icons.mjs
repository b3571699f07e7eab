/** Renders src/taskpane/icons/icon.svg to the PNG sizes that Office asks for. Run it after a change of the SVG: node scripts/icons.mjs */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { ensureBrowser, root } from './ensure.mjs';

const SIZES = [16, 20, 24, 32, 40, 48, 64, 80, 128];
const folder = path.join(root, 'src', 'taskpane', 'icons');
const svg = `data:image/svg+xml;base64,${readFileSync(path.join(folder, 'icon.svg')).toString('base64')}`;

const executablePath = ensureBrowser();
if (!executablePath) throw new Error('No Chromium found: install one, or set CHROMIUM to its path');
const browser = await chromium.launch({
  executablePath,
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--no-first-run'],
});
try {
  const page = await browser.newPage();
  for (const size of SIZES) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(`<style>body{margin:0}img{display:block;width:${size}px;height:${size}px}</style><img src="${svg}">`);
    await page.locator('img').evaluate((image) => image.decode());
    await page.screenshot({ path: path.join(folder, `icon-${size}.png`), omitBackground: true });
  }
} finally {
  await browser.close();
}
