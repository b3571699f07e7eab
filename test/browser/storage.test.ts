import type { BrowserContext, Page } from 'playwright-core';
import { goTo, newPage, open, ready, saved, type Served, serveWorkbench, typeInto, valueAt, waitForValue } from './workbenchPage';

jest.setTimeout(120_000);

let served: Served;
let page: Page;
let context: BrowserContext;
let sheet: string;
let title: unknown;

beforeAll(async () => {
  served = await serveWorkbench();
});

afterAll(() => served?.close());

beforeEach(async () => {
  ({ page } = await newPage(served));
  context = page.context();
  await open(page, served.url);
  await saved(page);
  [sheet] = await page.evaluate(() => window.provingsheet!.sheets());
  title = await valueAt(page, sheet, 'A1');
});

afterEach(() => context.close());

/** The records in the browser's storage, by key. */
function stored(): Promise<Record<string, unknown>> {
  return page.evaluate(() => new Promise<Record<string, unknown>>((resolve, reject) => {
    const request = indexedDB.open('provingsheet');
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const store = request.result.transaction('workbooks').objectStore('workbooks');
      const keys = store.getAllKeys();
      const values = store.getAll();
      values.onsuccess = () => {
        request.result.close();
        resolve(Object.fromEntries(keys.result.map((key, index) => [String(key), values.result[index]])));
      };
    };
  }));
}

/** Puts a record into storage in place of the stored workbook, with the workbench closed. */
async function store(record: unknown): Promise<void> {
  await page.goto(`${served.url}icon.svg`);
  await page.evaluate((raw) => new Promise<void>((resolve, reject) => {
    const request = indexedDB.open('provingsheet');
    request.onerror = () => reject(request.error);
    request.onsuccess = () => {
      const transaction = request.result.transaction('workbooks', 'readwrite');
      transaction.objectStore('workbooks').put(raw, 'current.v1');
      transaction.oncomplete = () => {
        request.result.close();
        resolve();
      };
    };
  }), record);
}

test('an edit survives a reload', async () => {
  await typeInto(page, 'A1', 'My own title');
  await saved(page);
  await page.reload();
  await ready(page);
  expect(await valueAt(page, sheet, 'A1')).toBe('My own title');
});

test('an edit survives a reload right after it', async () => {
  await typeInto(page, 'A1', 'In a hurry');
  await waitForValue(page, sheet, 'A1', 'In a hurry');
  await page.reload();
  await ready(page);
  expect(await valueAt(page, sheet, 'A1')).toBe('In a hurry');
});

test('an edit survives a reload even if the database was not given the time to take it', async () => {
  await typeInto(page, 'A1', 'Stored before');
  await saved(page);
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => { throw new Error('too late'); };
  });
  await typeInto(page, 'A1', 'In a hurry');
  await waitForValue(page, sheet, 'A1', 'In a hurry');
  await page.reload();
  await ready(page);
  expect(await valueAt(page, sheet, 'A1')).toBe('In a hurry');
});

test('"First workbook…" asks, brings the original back, and the last workbook can be brought back after it', async () => {
  await typeInto(page, 'A1', 'My own title');
  await saved(page);
  await page.click('#first-button');
  await page.waitForSelector('#first-dialog[open]');
  expect(await page.locator('#first-dialog').innerText()).toContain('is put aside in this browser');
  expect(await valueAt(page, sheet, 'A1')).toBe('My own title');
  await page.getByRole('button', { name: 'Open the first workbook' }).click();
  await waitForValue(page, sheet, 'A1', title as string);
  await page.reload();
  await ready(page);
  expect(await valueAt(page, sheet, 'A1')).toBe(title);

  await page.click('#first-button');
  await page.locator('#first-dialog').getByRole('button', { name: 'Bring back my last workbook' }).click();
  await waitForValue(page, sheet, 'A1', 'My own title');
  await page.reload();
  await ready(page);
  expect(await valueAt(page, sheet, 'A1')).toBe('My own title');
});

test('the notice after "First workbook…" offers the way back', async () => {
  await typeInto(page, 'A1', 'My own title');
  await page.click('#first-button');
  await page.getByRole('button', { name: 'Open the first workbook' }).click();
  await page.locator('#notice').getByRole('button', { name: 'Bring back my last workbook' }).click();
  await waitForValue(page, sheet, 'A1', 'My own title');
});

test('a record that is no workbook is told of and kept, and the first workbook opens', async () => {
  const record = { form: 1, savedAt: '2026-01-01T00:00:00Z', workbook: { id: 'x', sheetOrder: ['gone'], sheets: {} }, note: 'my work' };
  await store(record);
  await open(page, served.url);
  expect(await page.locator('#notice p').textContent()).toMatch(/could not be read.*is kept in this browser as “unreadable /);
  expect(await valueAt(page, sheet, 'A1')).toBe(title);
  const kept = Object.entries(await stored()).filter(([key]) => key.startsWith('unreadable '));
  expect(kept.map(([, value]) => value)).toEqual([record]);
});

test('an unreadable record can be saved as a file', async () => {
  await store('no workbook at all');
  await open(page, served.url);
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save it as a file' }).click();
  expect((await download).suggestedFilename()).toMatch(/^provingsheet unreadable .*\.json$/);
});

test('a workbook that breaks the grid leaves a way to the first workbook, and is kept', async () => {
  const record = { form: 1, savedAt: '2026-01-01T00:00:00Z', workbook: { id: 'x', sheetOrder: ['s'], sheets: { s: { id: 's', name: 'S', cellData: {}, mergeData: 5 } }, styles: {} } };
  await store(record);
  await page.goto(served.url);
  await page.waitForFunction(() => document.querySelector('#loading-words')?.textContent?.startsWith('The workbench could not be opened'));
  await page.getByRole('button', { name: 'Reset to first workbook' }).click();
  await ready(page);
  expect(await valueAt(page, sheet, 'A1')).toBe(title);
  const kept = Object.entries(await stored()).filter(([key]) => key.startsWith('unreadable '));
  expect(kept.map(([, value]) => value)).toEqual([record]);
});

test('a browser without room says that the work is not saved', async () => {
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => {
      throw new DOMException('full', 'QuotaExceededError');
    };
  });
  await typeInto(page, 'A1', 'My own title');
  await page.waitForSelector('#saved[data-state="failed"]');
  expect(await page.locator('#saved [role=status]').textContent()).toBe('Not saved: the browser has no room left');
});

test('a browser without storage opens the first workbook and warns before it is exchanged', async () => {
  await page.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('storage is switched off', 'SecurityError');
    };
  });
  await open(page, served.url);
  expect(await page.locator('#saved [role=status]').textContent()).toBe('Not saved: storage is switched off');
  expect(await valueAt(page, sheet, 'A1')).toBe(title);
  await page.click('#first-button');
  await page.waitForSelector('#first-dialog[open]');
  expect(await page.locator('#first-dialog').innerText()).toContain('is lost then');
});

test('a reload opens the sheet and the cell in use, and going to a cell is no change to store', async () => {
  const states = await page.evaluateHandle(() => {
    const seen: string[] = [];
    const place = document.querySelector<HTMLElement>('#saved')!;
    new MutationObserver(() => seen.push(place.dataset.state!)).observe(place, { attributeFilter: ['data-state'] });
    return seen;
  });
  await page.locator('#grid [role="tab"]').nth(1).click();
  await goTo(page, 'C7');
  await page.waitForTimeout(600);
  expect(await states.jsonValue()).not.toContain('saving');
  await page.evaluate(() => document.querySelector('#saved')!.setAttribute('data-state', 'saved'));
  await typeInto(page, 'N12', '4');
  await saved(page);
  await page.reload();
  await ready(page);
  expect(await page.locator('#grid [role="tab"][aria-selected="true"]').textContent()).toBe(await page.evaluate(() => window.provingsheet!.sheets()[1]));
  await page.waitForFunction(() => document.querySelector('#cell-words')?.textContent?.startsWith('N13, '));
});

test('another workbook does not open at the place of the one before', async () => {
  await typeInto(page, 'A1', 'My own title');
  await page.evaluate(() => localStorage.setItem('provingsheet.place', '{"workbook":"another","sheet":"sheet-2","cell":"C7"}'));
  await page.goto('about:blank');
  await page.addInitScript(() => localStorage.setItem('provingsheet.place', '{"workbook":"another","sheet":"sheet-2","cell":"C7"}'));
  await open(page, served.url);
  expect(await page.locator('#cell-words').textContent()).toMatch(/^A1, /);
  expect(await page.locator('#grid [role="tab"][aria-selected="true"]').textContent()).toBe(sheet);
});

test('a second tab says what to do, and takes over once the first is closed', async () => {
  await typeInto(page, 'A1', 'From the first tab');
  await saved(page);
  const second = await context.newPage();
  await open(second, served.url);
  const notice = second.locator('#notice');
  expect(await notice.locator('p').textContent()).toContain('What you change here is lost. Close the other tab, then reload this one.');
  expect(await second.locator('#first-button').getAttribute('title')).toContain('open in another tab');
  await page.close();
  await second.waitForFunction(() => document.querySelector('#notice p')?.textContent?.startsWith('The other tab is closed.'));
  await notice.getByRole('button', { name: 'Reload to edit here' }).click();
  await second.waitForSelector('#saved[data-state="saved"]');
  expect(await second.locator('#notice').isVisible()).toBe(false);
  expect(await valueAt(second, sheet, 'A1')).toBe('From the first tab');
});

test('a second tab is not told that the first is closed when it is only reloaded', async () => {
  await saved(page);
  const second = await context.newPage();
  await open(second, served.url);
  await second.waitForSelector('#notice p');
  await page.reload();
  await ready(page);
  await page.waitForSelector('#saved[data-state="saved"]');
  await second.waitForTimeout(4000);
  expect(await second.locator('#notice p').textContent()).toContain('is open in another tab');
});

test('a second tab does not overwrite the first, and says so', async () => {
  const second = await context.newPage();
  await open(second, served.url);
  await second.waitForSelector('#saved[data-state="failed"]');
  expect(await second.locator('#saved [role=status]').textContent()).toBe('Open in another tab: changes here are not saved');
  expect(await second.locator('#first-button').isDisabled()).toBe(true);
  await typeInto(page, 'A1', 'From the first tab');
  await saved(page);
  await goTo(second, 'A1');
  await typeInto(second, 'A1', 'From the second tab');
  await second.close();
  await page.reload();
  await ready(page);
  expect(await valueAt(page, sheet, 'A1')).toBe('From the first tab');
});
