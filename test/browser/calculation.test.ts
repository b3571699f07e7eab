import type { Page } from 'playwright-core';
import { addSheet, goTo, newPage, open, type Served, serveWorkbench, typeColumn, typeInto, valueAt, waitForValue, type Watch } from './workbenchPage';

jest.setTimeout(120_000);

let served: Served;
let page: Page;
let watch: Watch;
let sheet: string;

beforeAll(async () => {
  served = await serveWorkbench();
  ({ page, watch } = await newPage(served));
  await open(page, served.url);
  sheet = await addSheet(page);
  await typeColumn(page, 'A1', ['0', '50', '100', '0']);
  await typeColumn(page, 'B1', ['0.01', '1.01', '2.012', '0.014']);
});

afterAll(() => served?.close());

/** Waits until one of the grid's own popups says `text`, spaces aside, and returns all it says. */
async function popupWith(text: string): Promise<string> {
  const said = await page.waitForFunction((wanted) => {
    const popups = [...document.querySelectorAll<HTMLElement>('.univer-w-\\[250px\\]')].map((popup) => popup.innerText);
    return popups.find((words) => words.replace(/\s+/g, '').includes(wanted));
  }, text.replace(/\s+/g, ''));
  return (await said.jsonValue()) ?? '';
}

test('typing the start of a name lists the functions that begin so, with what they do', async () => {
  await goTo(page, 'D1');
  await page.keyboard.type('=PROVE.NE', { delay: 40 });
  expect(await popupWith('PROVE.NET')).toContain('Net readings: each reading less the zero of its run.');
});

test('taking a function from the list shows its arguments, the optional one in brackets', async () => {
  await page.keyboard.press('Tab');
  expect(await popupWith('PROVE.NET(forces,readings,[zero])')).not.toContain('undefined');
});

test('a formula finished by keyboard spills its results', async () => {
  await page.keyboard.type('A1:A4,B1:B4)', { delay: 20 });
  await page.keyboard.press('Enter');
  await waitForValue(page, sheet, 'D2', 1);
  expect(await valueAt(page, sheet, 'D1')).toBe(0);
  await waitForValue(page, sheet, 'D3', 2.002);
  await waitForValue(page, sheet, 'D4', 0.004);
});

test('the pane shows the function of the selected cell, also from within its spilled results', async () => {
  await goTo(page, 'D3');
  await page.waitForFunction(() => document.querySelector('#function-help h2')?.textContent === 'PROVE.NET');
  expect(await page.locator('.fh-cell').textContent()).toBe('Cell D3');
});

test('an edited reading changes what depends on it, through the spilled cells', async () => {
  await typeInto(page, 'F1', '=AVERAGE(D2:D3)');
  await waitForValue(page, sheet, 'F1', 1.501);
  await typeInto(page, 'B3', '2.112');
  await waitForValue(page, sheet, 'D3', 2.102);
  await waitForValue(page, sheet, 'F1', 1.551);
});

describe('a wrong reading', () => {
  const message = 'readings row 2 (B2): found the text "1.2x"; expected a number';

  beforeAll(() => typeInto(page, 'B2', '1.2x'));

  test('is said under the grid with its row, what was found and what was expected', async () => {
    await waitForValue(page, sheet, 'D1', '#VALUE!');
    await page.waitForFunction((words) => document.querySelector('#strip')?.textContent?.includes(words), message);
    expect(await page.locator('#strip p[role=status]').textContent()).toBe(`D1 #VALUE!: ${message}`);
  });

  test('leaves no result of the vanished spill behind', async () => {
    await waitForValue(page, sheet, 'F1', '#DIV/0!');
  });

  test('is gone to from under the grid', async () => {
    await page.getByRole('button', { name: 'Go to B2' }).click();
    await page.waitForFunction(() => document.querySelector('.fh-cell')?.textContent === 'Cell B2');
    expect(await page.locator('#strip button').allTextContents()).toEqual(['Go to D1', expect.stringMatching(/^Next of/)]);
  });

  test('is said in the pane after going to the cell from under the grid', async () => {
    await page.getByRole('button', { name: 'Go to D1' }).click();
    await page.waitForFunction(() => document.querySelector('.fh-fault')?.textContent !== '');
    expect(await page.locator('.fh-fault-message').textContent()).toBe(message);
    expect(await page.locator('.fh-cell').textContent()).toBe('Cell D1');
  });

  test('is named as the cause in a cell that only passes the error on', async () => {
    await typeInto(page, 'G1', '=2*D1');
    await waitForValue(page, sheet, 'G1', '#VALUE!');
    await goTo(page, 'G1');
    await page.waitForFunction(() => document.querySelector('.fh-fault')?.textContent?.includes('From D1'));
    expect(await page.locator('.fh-fault-message').textContent()).toBe(`From D1: ${message}`);
  });

  test('is taken back by undo, and the results with it', async () => {
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await waitForValue(page, sheet, 'B2', 1.01);
    await waitForValue(page, sheet, 'D2', 1);
    await waitForValue(page, sheet, 'F1', 1.551);
    await page.waitForFunction(() => document.querySelector('#strip p[role=status]')?.textContent === 'No errors on this sheet');
  });
});

test('formulas that read the cells of a deleted spill are computed anew', async () => {
  await goTo(page, 'D1');
  await page.keyboard.press('Delete');
  await waitForValue(page, sheet, 'F1', '#DIV/0!');
  await page.keyboard.press('Control+z');
  await waitForValue(page, sheet, 'F1', 1.551);
});

test('a block copied from a logger or another spreadsheet is pasted into cells as numbers', async () => {
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.evaluate(() => navigator.clipboard.writeText('10\t0.5\n20\t1.25'));
  await goTo(page, 'J1');
  await page.keyboard.press('Control+v');
  await waitForValue(page, sheet, 'K2', 1.25);
  expect(await valueAt(page, sheet, 'J1')).toBe(10);
});

test('the pane follows to another sheet', async () => {
  await page.locator('[data-u-comp="slide-tab-item"]').getByText('Five-point run', { exact: true }).click();
  await page.waitForFunction(() => document.querySelector('.fh-cell')?.textContent === 'Cell A1');
  await goTo(page, 'I7');
  await page.waitForFunction(() => document.querySelector('#function-help h2')?.textContent === 'PROVE.SENSITIVITY');
});

test('nothing is asked of another machine', () => {
  expect(watch.requests.length).toBeGreaterThan(3);
  expect(watch.requests.filter((address) => !address.startsWith(served.url) && !address.startsWith('data:'))).toEqual([]);
});

test('nothing fails on the way', () => {
  expect(watch.faults).toEqual([]);
});

describe('a formula that is misspelt', () => {
  test.each([
    ['an option without quotes', '=PROVE.NONLINEARITY(A1:A3,B1:B3,bestfit)', 'the name bestfit is not known; text needs quotes'],
    ['a bracket too many', '=PROVE.ZEROBALANCE(0.02,2))', 'found ")" without a "(" before it'],
  ])('says what is wrong with it: %s', async (_, text, message) => {
    await typeInto(page, 'H22', text);
    await page.waitForFunction((words) => document.querySelector('#strip p[role=status]')?.textContent?.includes(words), message);
    expect(await page.locator('#strip p[role=status]').textContent()).toContain('H22 #');
  });
});
