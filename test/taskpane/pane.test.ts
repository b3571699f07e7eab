/** @jest-environment jsdom */
import { createPane } from '../../src/taskpane/pane';
import { worksheetParts } from '../../src/taskpane/worksheetParts';
import { inventedJobSheet } from '../../src/worksheets/data/inventedJob';
import { fakeMemory, FakeHost, fakePlanning, passed } from './fakes';
import { contentOf } from './job/jobHost';

jest.mock('../../src/taskpane/plot/chart', () => ({ createChart: jest.fn() }));
Element.prototype.scrollIntoView = jest.fn();
Object.assign(globalThis, { ResizeObserver: class { observe(): void {} }, matchMedia: () => ({ addEventListener: jest.fn() }) });

function mounted(memory = fakeMemory(), host = new FakeHost()) {
  const root = document.createElement('div');
  document.body.replaceChildren(root);
  const toSheet = jest.fn();
  const pane = createPane(root, {
    ...worksheetParts, host, memory, toSheet, planning: fakePlanning, isRun: () => true, plots: () => [],
    review: () => ({ findings: [], recomputed: 0, agreeing: 0, sheets: [], record: 'none' }),
    readWorkbook: async () => [], issueCopy: async (bytes) => bytes, deliver: async () => undefined,
    check: () => [{ severity: 'wrong', at: 'B6', message: 'found text' }],
  });
  const open = (): string | null | undefined => root.querySelector('[role=tab][aria-selected=true]')?.textContent;
  const tab = (label: string): HTMLElement => [...root.querySelectorAll<HTMLElement>('[role=tab]')].find(({ textContent }) => textContent === label)!;
  return { root, host, pane, open, tab, memory, toSheet };
}

/** A workbook whose second sheet is that of a job. */
function withJob(): FakeHost {
  const host = new FakeHost();
  host.content.set('Job', contentOf(inventedJobSheet()));
  return host;
}

test('has its tabs in the order of the work, and opens with Build', async () => {
  const { root, open } = mounted();
  await passed(5);
  expect([...root.querySelectorAll('[role=tab]')].map(({ textContent }) => textContent)).toEqual(['Job', 'Build', 'Readings', 'Check', 'Plot', 'Review', 'Help']);
  expect(open()).toBe('Build');
});

describe('a workbook with a job', () => {
  test('opens with Job, whatever was used last', async () => {
    const memory = fakeMemory();
    memory.set('pane.tab', 'plot');
    const { open, root } = mounted(memory, withJob());
    await passed(10);
    expect(open()).toBe('Job');
    expect(root.querySelector('.rp-job h2')!.textContent).toBe('Job DEMO-2026-041');
  });

  test('leaves alone whoever has chosen a tab already', async () => {
    const { open, tab } = mounted(fakeMemory(), withJob());
    tab('Help').click();
    await passed(10);
    expect(open()).toBe('Help');
  });

  test('a step opens its form in Build, and the way back leads to the job', async () => {
    const { root, open, tab } = mounted(fakeMemory(), withJob());
    await passed(10);
    const press = (label: string): void => [...root.querySelectorAll('button')].find(({ textContent }) => textContent === label)!.click();
    tab('Job').click();
    await passed(10);
    // The fake planner has no inspection, so the step is given one by the procedure that it knows.
    expect(root.querySelector('.rp-step-now')!.textContent).toContain('Inspected');
    press('Job sheet');
    expect(open()).toBe('Job');
  });
});

test('a Review sheet that is written is named at the step of every item that has come so far', async () => {
  const host = withJob();
  const { root, tab } = mounted(fakeMemory(), host);
  const { job } = worksheetParts;
  const read = job.jobOf([...host.content.values()])!;
  const over = { inspected: 'sound', as_found: 'skipped: x', adjusted: 'repaired', as_left: 'skipped: x', decided: 'scrapped', certificate: 'skipped: x' };
  await host.fill('Job', Object.entries(over).map(([step, value]) => ({ at: read.items[0].way[step as 'inspected'].at, value })));
  tab('Review').click();
  await passed(30);
  const by = [...root.querySelectorAll('label')].find(({ textContent }) => /review/i.test(textContent ?? ''))!;
  const input = document.getElementById(by.htmlFor) as HTMLInputElement;
  input.value = 'R. Example';
  input.dispatchEvent(new Event('input', { bubbles: true }));
  [...root.querySelectorAll('button')].find(({ textContent }) => /Write the Review sheet/.test(textContent ?? ''))!.click();
  await passed(60);
  const after = job.jobOf([...host.content.values()])!;
  expect(after.items.map(({ way }) => way.reviewed.value)).toEqual(['Review', undefined]);
});

test('opens the next time with the tab that was used last', () => {
  const { tab, memory } = mounted();
  tab('Plot').click();
  expect(mounted(memory).open()).toBe('Plot');
});

test('opens with Build if what was remembered is no tab', () => {
  const memory = fakeMemory();
  memory.set('pane.tab', 'toString');
  expect(mounted(memory).open()).toBe('Build');
});

test('Help follows the selected cell with its error, and does not take the tab', () => {
  const { pane, open, root } = mounted();
  pane.help.show({ cell: 'B4', functionIds: ['NET'], error: { code: '#N/A', message: 'the class is not met' } });
  expect(open()).toBe('Build');
  expect(root.querySelector('#function-help .fh-fault')!.textContent).toContain('the class is not met');
});

test('the sheet is read only while Check or Plot is in sight', async () => {
  const { host, tab } = mounted();
  await passed();
  const before = host.reads;
  host.change();
  await passed(400);
  expect(host.reads).toBe(before);
  tab('Check').click();
  await passed();
  expect(host.reads).toBe(before + 1);
  tab('Help').click();
  host.change();
  await passed(400);
  expect(host.reads).toBe(before + 1);
});

test('a finding selects its cell, once the pane gave way', async () => {
  const { tab, root, host, toSheet } = mounted();
  tab('Check').click();
  await passed();
  root.querySelector<HTMLElement>('.rp-finding')!.click();
  expect(toSheet).toHaveBeenCalledTimes(1);
  expect(host.selected).toEqual(['Sheet1!B6']);
});

test('a cell that cannot be selected is told of', async () => {
  const { tab, root, host } = mounted();
  host.select = () => Promise.reject(new Error('there is no sheet “Sheet1”'));
  tab('Check').click();
  await passed();
  root.querySelector<HTMLElement>('.rp-finding')!.click();
  await passed();
  expect(root.querySelector('.rp-problem')!.textContent).toBe('B6 could not be selected: there is no sheet “Sheet1”');
});

test('a browser that stores nothing is told of, since half-typed words would be lost; one that stores again is not', () => {
  const memory = fakeMemory(true);
  const { root, tab } = mounted(memory);
  const said = () => root.textContent?.includes('the browser’s storage is full or blocked') ?? false;
  expect(said()).toBe(true);
  memory.set = () => true;
  tab('Help').click();
  expect(said()).toBe(false);
});
