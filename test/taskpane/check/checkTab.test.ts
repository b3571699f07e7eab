/** @jest-environment jsdom */
import type { SheetContent } from '../../../src/hosts/sheetHost';
import { CheckTab } from '../../../src/taskpane/check/checkTab';
import { isRun } from '../../../src/taskpane/check/isRun';
import type { Finding } from '../../../src/worksheets/check/checkSheet';

const RUN: SheetContent = { name: 'Run', cells: [], merges: [], names: [{ name: 'readings_tension', range: 'B5:C15' }] };
const FOUND: readonly Finding[] = [
  { severity: 'odd', at: 'B7', message: 'far from its neighbours' },
  { severity: 'wrong', at: 'B6', message: 'found text; expected a number' },
  { severity: 'missing', at: 'C8', message: 'no reading' },
  { severity: 'missing', at: 'C9', message: 'no reading' },
];

function mounted(found: readonly Finding[]) {
  let findings = found;
  const goTo = jest.fn();
  const build = jest.fn();
  const tab = new CheckTab({ check: () => findings, isRun, goTo, build });
  document.body.replaceChildren(tab.element);
  tab.show(RUN);
  const status = (): string | null => tab.element.querySelector('[role=status]')!.textContent;
  const texts = (selector: string): (string | null)[] => [...tab.element.querySelectorAll(selector)].map(({ textContent }) => textContent);
  return { tab, goTo, build, status, texts, find: (next: readonly Finding[]) => { findings = next; tab.show(RUN); } };
}

test('findings stand in groups by severity, with their numbers', () => {
  const { status, texts } = mounted(FOUND);
  expect(status()).toBe('1 wrong, 2 missing, 1 odd');
  expect(texts('h3')).toEqual(['Wrong (1)', 'Missing (2)', 'Odd, look again (1)']);
  expect(texts('h2')).toEqual(['Run']);
});

test('each finding goes to its cell', () => {
  const { tab, goTo } = mounted(FOUND);
  tab.element.querySelectorAll('button')[1].click();
  expect(goTo).toHaveBeenCalledWith('Run', 'C8');
});

test('a sound sheet says so', () => {
  expect(mounted([]).status()).toBe('Nothing is missing or odd.');
});

test('a sheet without run readings is not judged, and the way to one is offered', () => {
  const { tab, status, texts, build } = mounted(FOUND);
  tab.show({ ...RUN, name: 'Notes', names: [] });
  expect(status()).toBe('This sheet has no run readings.');
  expect(texts('.rp-finding')).toEqual([]);
  tab.element.querySelector('button')!.click();
  expect(build).toHaveBeenCalledTimes(1);
});

test('after a change the finding that had the focus keeps it, though others went', () => {
  const { tab, find } = mounted(FOUND);
  tab.element.querySelectorAll('button')[2].focus();
  find(FOUND.slice(2));
  expect(document.activeElement?.textContent).toBe('C9 no reading');
});

test('what did not change is not drawn anew', () => {
  const { tab, find } = mounted(FOUND);
  const before = tab.element.querySelector('button');
  find([...FOUND]);
  expect(tab.element.querySelector('button')).toBe(before);
});

test('a sheet that cannot be read is told of in place of the findings', () => {
  const { tab, status, texts, find } = mounted(FOUND);
  tab.fail('The sheet could not be read: busy');
  expect(status()).toBe('The sheet could not be read: busy');
  expect(texts('.rp-finding')).toEqual([]);
  find(FOUND);
  expect(texts('.rp-finding')).toHaveLength(4);
});

test.each([['readings_tension', true], ['value_gap', true], ['Print_Area', false]])('a sheet that names %s is one to check: %s', (name, expected) => {
  expect(isRun({ ...RUN, names: [{ name, range: 'A1' }] })).toBe(expected);
});
