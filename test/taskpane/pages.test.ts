/** @jest-environment jsdom */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { helpTexts } from '../../src/taskpane/helpTexts';

// The pane is loaded anew by each test.
jest.setTimeout(30_000);
// jsdom has no canvas, and measures nothing.
jest.mock('../../src/taskpane/plot/chart', () => ({ createChart: jest.fn() }));
Element.prototype.scrollIntoView = jest.fn();
Object.assign(globalThis, { ResizeObserver: class { observe(): void {} }, matchMedia: () => ({ addEventListener: jest.fn() }) });

const [first, second] = helpTexts;

/** Puts the body of a page into the document, and runs its script. */
function opened(page: string, script: string): void {
  const html = readFileSync(path.join(__dirname, '..', '..', 'src', 'taskpane', page), 'utf8');
  document.head.innerHTML = '';
  document.body.innerHTML = /<body[^>]*>([\s\S]*)<\/body>/.exec(html)?.[1] ?? '';
  jest.isolateModules(() => { jest.requireActual(`../../src/taskpane/${script}`); });
}

const headings = (): (string | null)[] => [...document.querySelectorAll('article h2')].map((heading) => heading.textContent);
const settled = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 20); });

describe('the help page', () => {
  const goTo = async (hash: string): Promise<void> => {
    window.location.hash = hash;
    await settled();
  };

  beforeEach(() => goTo(''));

  test('shows the list without a function in its address', () => {
    opened('help.html', 'help');
    expect(document.querySelectorAll('.fh-choice')).toHaveLength(helpTexts.length);
  });

  test('opens the function in its address, in any case, and names it in the title', async () => {
    await goTo(`#${first.id.toLowerCase()}`);
    opened('help.html', 'help');
    expect(headings()).toEqual([first.name]);
    expect(document.title).toContain(first.name);
  });

  test('follows its address, as when Back is pressed', async () => {
    opened('help.html', 'help');
    await goTo(`#${second.id}`);
    expect(headings()).toEqual([second.name]);
    await goTo('');
    expect(headings()).toEqual([]);
  });

  test('puts the function that a person opens into its address', async () => {
    opened('help.html', 'help');
    document.querySelector<HTMLElement>(`[data-function="${first.id}"]`)?.click();
    await settled();
    expect(window.location.hash).toBe(`#${first.id}`);
    document.querySelector<HTMLElement>('.fh-back')?.click();
    await settled();
    expect(window.location.hash).toBe('');
  });
});

describe('the pane of Excel', () => {
  const associate = jest.fn();
  let batch: (cell: object) => Promise<unknown>;

  /** Excel with one selected cell; `batch` answers each run. */
  function insideExcel(cell: object, theme?: object): void {
    const events = { add: jest.fn() };
    const worksheets = { onSelectionChanged: events, onActivated: events, onCalculated: events, onChanged: events };
    const getActiveCell = (): object => ({ load: jest.fn(), ...cell, getSpillParentOrNullObject: () => ({ load: jest.fn(), isNullObject: true }) });
    batch = async (run) => (run as (context: object) => unknown)({ workbook: { worksheets, getActiveCell }, sync: async () => undefined });
    Object.assign(globalThis, {
      CustomFunctions: { associate },
      Excel: { run: (_: object, run: object) => batch(run) },
      Office: { HostType: { Excel: 'Excel' }, context: { officeTheme: theme }, onReady: (ready: (info: object) => void) => ready({ host: 'Excel' }) },
    });
  }

  const scriptOf = (): HTMLScriptElement | null => document.head.querySelector('script');
  const CELL = { address: 'Sheet1!B4', formulas: [[`=PROVE.${first.id}(A1)`]], values: [['#N/A']], valueTypes: [['Error']] };

  test('associates the functions and shows the help and the error of the selected cell', async () => {
    insideExcel(CELL);
    opened('taskpane.html', 'main');
    scriptOf()?.dispatchEvent(new Event('load'));
    await settled();
    expect(associate.mock.calls.map(([id]) => id as string).sort()).toEqual(helpTexts.map(({ id }) => id).sort());
    expect(headings()).toEqual([first.name]);
    expect(document.querySelector('.fh-fault')?.textContent).toContain('Error in B4: #N/A');
    expect(document.getElementById('notice')?.hidden).toBe(true);
  });

  test('says in words why the selection cannot be read', async () => {
    insideExcel(CELL);
    batch = async () => { throw Object.assign(new Error('x'), { code: 'AccessDenied' }); };
    opened('taskpane.html', 'main');
    scriptOf()?.dispatchEvent(new Event('load'));
    await settled();
    expect(document.getElementById('problem')?.textContent).toContain('protected view');
  });

  test('takes on the theme of Office', async () => {
    insideExcel(CELL, { isDarkTheme: true });
    opened('taskpane.html', 'main');
    scriptOf()?.dispatchEvent(new Event('load'));
    await settled();
    expect(document.documentElement.style.colorScheme).toBe('dark');
  });

  test('in a plain tab explains itself, with a way to the workbench and the help, and still lists the functions', () => {
    opened('taskpane.html', 'main');
    expect(document.getElementById('notice')?.hidden).toBe(true);
    scriptOf()?.dispatchEvent(new Event('error'));
    expect(document.getElementById('notice')?.hidden).toBe(false);
    expect([...document.querySelectorAll<HTMLAnchorElement>('#notice a')].map((link) => link.getAttribute('href'))).toEqual(['index.html', 'help.html']);
    expect(document.querySelectorAll('.fh-choice')).toHaveLength(helpTexts.length);
  });
});
