/** @jest-environment jsdom */
import { createPane } from '../../src/taskpane/pane';
import { fakeMemory, FakeHost, fakePlanning, passed } from './fakes';

jest.mock('../../src/taskpane/plot/chart', () => ({ createChart: jest.fn() }));
Element.prototype.scrollIntoView = jest.fn();
Object.assign(globalThis, { ResizeObserver: class { observe(): void {} }, matchMedia: () => ({ addEventListener: jest.fn() }) });

function mounted(memory = fakeMemory()) {
  const root = document.createElement('div');
  document.body.replaceChildren(root);
  const host = new FakeHost();
  const toSheet = jest.fn();
  const pane = createPane(root, {
    host, memory, toSheet, planning: fakePlanning, isRun: () => true, plots: () => [],
    check: () => [{ severity: 'wrong', at: 'B6', message: 'found text' }],
  });
  const open = (): string | null | undefined => root.querySelector('[role=tab][aria-selected=true]')?.textContent;
  const tab = (label: string): HTMLElement => [...root.querySelectorAll<HTMLElement>('[role=tab]')].find(({ textContent }) => textContent === label)!;
  return { root, host, pane, open, tab, memory, toSheet };
}

test('has the tabs Build, Check, Plot and Help, and opens with Build', () => {
  const { root, open } = mounted();
  expect([...root.querySelectorAll('[role=tab]')].map(({ textContent }) => textContent)).toEqual(['Build', 'Check', 'Plot', 'Help']);
  expect(open()).toBe('Build');
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
  host.change();
  await passed(400);
  expect(host.reads).toBe(0);
  tab('Check').click();
  await passed();
  expect(host.reads).toBe(1);
  tab('Help').click();
  host.change();
  await passed(400);
  expect(host.reads).toBe(1);
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
