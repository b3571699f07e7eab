/** Every template, built in the real page from the pane: by the mouse, and by the keyboard alone. And a ten-point run typed in, against metrology called directly. */
import type { Page } from 'playwright-core';
import type { SheetContent } from '../../src/hosts/sheetHost';
import { bestDegree, degreeSteps } from '../../src/metrology/degree';
import { loadingRange, lowerLimitFactor } from '../../src/metrology/loadingRange';
import { fitPolynomial } from '../../src/metrology/polynomialFit';
import type { Run } from '../../src/metrology/run';
import { builtInTemplates } from '../../src/worksheets/library';
import type { SheetPlan } from '../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import { expectDigits } from '../digits';
import { newPage, open, type Served, serveWorkbench, typeColumn, waitForValue } from './workbenchPage';

jest.setTimeout(240_000);

const templates = builtInTemplates();
let served: Served;
let page: Page;
let faults: readonly string[];

beforeAll(async () => {
  served = await serveWorkbench();
  const made = await newPage(served);
  ({ page } = made);
  ({ faults } = made.watch);
  await open(page, served.url);
  page.setDefaultTimeout(10_000);
});

afterAll(() => served?.close());

function planOf(id: string): SheetPlan {
  const template = templates.find((candidate) => candidate.id === id)!;
  return planSheet(template, suggestedAnswers(template)).plan!;
}

function read(sheet: string): Promise<SheetContent> {
  return page.evaluate((name) => window.provingsheet!.host.read(name), sheet);
}

/** Constants and formulas of a sheet, by address. */
function contents(cells: readonly { at: string; value?: unknown; formula?: string }[]): Record<string, unknown> {
  return Object.fromEntries(cells.flatMap(({ at, value, formula }) => (formula ?? value ?? '') === '' ? [] : [[at, formula ?? value]]));
}

async function expectBuilt(plan: SheetPlan): Promise<void> {
  await page.waitForSelector('.rp-built');
  const { cells, names } = await read(plan.name);
  const planned = contents(plan.cells);
  const built = contents(cells);
  expect(Object.fromEntries(Object.keys(planned).map((at) => [at, built[at]]))).toEqual(planned);
  expect(names).toHaveLength(plan.names!.length);
  await page.getByRole('button', { name: 'All templates' }).click();
}

describe.each(templates.map(({ id, title }) => [id, title] as const))('%s', (id, title) => {
  const plan = planOf(id);

  test('is built by the mouse', async () => {
    await page.locator('#pane').getByRole('tab', { name: 'Build' }).click();
    await page.locator(`[data-template="${id}"]`).click();
    await page.getByRole('button', { name: 'Build the sheet' }).click();
    await expectBuilt(plan);
    await page.evaluate((name) => window.provingsheet!.host.remove(name), plan.name);
  });

  test('is built by the keyboard alone', async () => {
    await page.locator('#pane input[type="search"]:visible').first().focus();
    await page.keyboard.type(title);
    await tabTo((text) => text.includes(title));
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Build the sheet' }).waitFor();
    await tabTo((text) => text === 'Build the sheet');
    await page.keyboard.press('Enter');
    await expectBuilt(plan);
    await page.evaluate((name) => window.provingsheet!.host.remove(name), plan.name);
    await page.locator('#pane input[type="search"]:visible').first().fill('');
  });
});

/** Presses Tab until an element with such a text has the focus. */
async function tabTo(wanted: (text: string) => boolean): Promise<void> {
  for (let presses = 0; presses < 80; presses += 1) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => document.activeElement?.textContent?.trim() ?? '');
    if (wanted(text)) return;
  }
  throw new Error('80 presses of Tab did not come to it');
}

describe('a ten-point run, typed in', () => {
  const plan = planOf('ten-point-force');
  const placeOf = (name: string): string => plan.names!.find((entry) => entry.name === name)!.range;
  /** Simulated here: a cubic response with a scatter that repeats. */
  const forces = [0, 2, 4, 6, 8, 10, 12, 14, 16, 18, 20, 0];
  const readings = [0, 1, 2].map((run) => forces.map((force, row) =>
    Number((-(0.01 + 0.1 * force - 2e-6 * force ** 2 + 1e-7 * force ** 3) + 2e-5 * Math.sin(7 * row + 3 * run)).toFixed(6))));

  beforeAll(async () => {
    await page.locator(`[data-template="ten-point-force"]`).click();
    await page.getByRole('button', { name: 'Build the sheet' }).click();
    await page.waitForSelector('.rp-built');
    const first = placeOf('readings_compression').split(':')[0];
    for (const [run, column] of readings.entries()) {
      await typeColumn(page, `${String.fromCharCode(first.charCodeAt(0) + run)}${first.slice(1)}`, column.map(String));
    }
    await waitForValue(page, plan.name, placeOf('verdict_overall'), await overall());
  });

  /** The words of the outcome, once it is told. */
  async function overall(): Promise<string> {
    await page.waitForFunction(([name, cell]) => !String(window.provingsheet!.valueAt(name, cell)).startsWith('open'), [plan.name, placeOf('verdict_overall')] as const);
    return page.evaluate(([name, cell]) => String(window.provingsheet!.valueAt(name, cell)), [plan.name, placeOf('verdict_overall')] as const);
  }

  const value = (name: string): Promise<unknown> => page.evaluate(([sheet, cell]) => window.provingsheet!.valueAt(sheet, cell), [plan.name, placeOf(`value_${name}`)] as const);
  const runs: Run[] = readings.map((column, run) => column.map((reading, row) => ({ row: row + 1, place: `row ${row + 1}`, order: run, force: forces[row], reading: reading - column[0] })));
  const loaded = runs.flat().filter(({ force }) => force > 0);
  const fit = fitPolynomial(loaded.map(({ force }) => force), loaded.map(({ reading }) => reading), 2);
  const greatest = runs.map((run) => run[10].reading).reduce((sum, reading) => sum + reading, 0) / 3;
  const resolution = Math.abs(0.000005 * 20 / greatest);

  test('coefficients, s, degree, lower limit factor and classes are those of metrology, to 12 digits', async () => {
    for (const [power, coefficient] of fit.coefficients.entries()) expectDigits(await value(`a${power}`) as number, coefficient, 12, `A${power}`);
    expectDigits(await value('residual_sd') as number, fit.residualSd!, 12, 's');
    expect(await value('best_degree')).toBe(bestDegree(degreeSteps(runs, 3)));
    expectDigits(await value('limit_factor') as number, lowerLimitFactor(loaded, fit, resolution), 12, 'LLF');
    expectDigits(await value('class_a') as number, loadingRange(loaded, fit, 'A', resolution).from, 12, 'class A');
    expectDigits(await value('class_aa') as number, loadingRange(loaded, fit, 'AA', resolution).from, 12, 'class AA');
  });

  test('its check with plain formulas agrees in every line', async () => {
    const { cells, names } = await read(plan.name);
    const at = new Map(cells.map((cell) => [cell.at, cell.value]));
    const verdicts = names.filter(({ name }) => name.startsWith('plain_')).map(({ name, range }) => [name, at.get(`F${range.slice(1)}`)]);
    expect(verdicts.filter(([name, verdict]) => verdict !== 'agrees' && name !== 'plain_a3')).toEqual([]);
    expect(verdicts.length).toBeGreaterThan(10);
  });
});

test('building and typing leave no fault in the console', () => {
  expect(faults).toEqual([]);
});
