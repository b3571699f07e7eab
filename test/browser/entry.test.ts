import type { Page } from 'playwright-core';
import { addSheet, goTo, newPage, open, type Served, serveWorkbench, typeColumn, typeInto, valueAt, waitForValue, type Watch } from './workbenchPage';

jest.setTimeout(120_000);

/** What is typed or pasted, and the value it must become. */
const ENTRIES: readonly (readonly [string, number | string])[] = [
  ['2,001', '2,001'], ['0,400', '0,400'], ['12,345', '12,345'], ['1,5E-3', '1,5E-3'], ['0,00012', '0,00012'],
  ['1/2', '1/2'], ['3-4', '3-4'], ['10:30', '10:30'], ['$5', '$5'], ['0x10', '0x10'], ['1e400', '1e400'],
  ['2.001', 2.001], ['-.5', -0.5], ['1.5E-3', 0.0015], ['5%', 0.05],
];

let served: Served;
let page: Page;
let watch: Watch;
let sheet: string;

beforeAll(async () => {
  served = await serveWorkbench();
  ({ page, watch } = await newPage(served, { width: 2600 }));
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await open(page, served.url);
  sheet = await addSheet(page);
});

afterAll(() => served?.close());

function column(letter: string): Promise<unknown[]> {
  return Promise.all(ENTRIES.map((_entry, index) => valueAt(page, sheet, `${letter}${index + 1}`)));
}

/** Pastes texts, as HTML too if given, and waits until the first is in its cell. */
async function paste(address: string, plain: string, html?: string): Promise<void> {
  await page.evaluate(async ([text, markup]) => {
    const item: Record<string, Blob> = { 'text/plain': new Blob([text!], { type: 'text/plain' }) };
    if (markup) item['text/html'] = new Blob([markup], { type: 'text/html' });
    await navigator.clipboard.write([new ClipboardItem(item)]);
  }, [plain, html] as const);
  await goTo(page, address);
  await page.keyboard.press('Control+v');
  await page.waitForFunction(([name, cell]) => window.provingsheet?.valueAt(name, cell) !== undefined, [sheet, address] as const);
}

describe('only plain numbers become numbers; a decimal comma and what looks like a date stay text', () => {
  const expected = ENTRIES.map(([, value]) => value);

  test('typed into cells', async () => {
    await typeColumn(page, 'A1', ENTRIES.map(([text]) => text));
    await waitForValue(page, sheet, `A${ENTRIES.length}`, 0.05);
    expect(await column('A')).toEqual(expected);
  });

  test('pasted as lines of text', async () => {
    await paste('C1', ENTRIES.map(([text]) => text).join('\n'));
    expect(await column('C')).toEqual(expected);
  });

  test('pasted as a table of another spreadsheet, with its number format', async () => {
    const cells = ENTRIES.map(([text]) => `<tr><td style="mso-number-format:'0.000'">${text}</td></tr>`).join('');
    await paste('E1', 'unused', `<html><body><table>${cells}</table></body></html>`);
    expect(await column('E')).toEqual(expected);
  });

  test('pasted alone', async () => {
    await paste('G1', '2,5');
    expect(await valueAt(page, sheet, 'G1')).toBe('2,5');
  });
});

test('a reading with a decimal comma is named by the function that reads it', async () => {
  await typeColumn(page, 'I1', ['0', '50', '100']);
  await typeColumn(page, 'J1', ['0', '1,001', '2.001']);
  await typeInto(page, 'K1', '=PROVE.NET(I1:I3,J1:J3)');
  await page.waitForFunction(() => document.querySelector('#strip')?.textContent?.includes('(J2): found the text "1,001"'));
});

describe('in a cell with a date format', () => {
  // Days since 1 January 1900, which is 1, with 1900 a leap year: 126 years, 31 leap days and the one too many, and those of 2026.
  const march5th = 126 * 365 + 32 + 31 + 28 + 5;

  async function formatAsDate(address: string): Promise<void> {
    await goTo(page, address);
    await page.getByText('General', { exact: true }).first().click();
    await page.getByRole('dialog').getByText('Date', { exact: true }).click();
  }

  test('a date typed is a date', async () => {
    await formatAsDate('M1');
    await typeInto(page, 'M1', '2026-03-05');
    await waitForValue(page, sheet, 'M1', march5th);
  });

  test('a date pasted is a date', async () => {
    await formatAsDate('M3');
    await paste('M3', '2026-03-06');
    await waitForValue(page, sheet, 'M3', march5th + 1);
  });
});

test.each(['A. Smith', '1. zero trimmed', '- no dash is lost', '* nor a star'])('“%s” stays as it is typed: no list is made of it', async (text) => {
  await typeInto(page, 'F1', text);
  await waitForValue(page, sheet, 'F1', text);
});

test('nothing fails on the way', () => {
  expect(watch.faults).toEqual([]);
});
