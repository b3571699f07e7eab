/** @jest-environment jsdom */
import { TemplateList } from '../../../src/taskpane/build/templateList';
import { TemplateShelf } from '../../../src/taskpane/build/templateShelf';
import type { Template } from '../../../src/worksheets/template';
import { fakeMemory, fakePlanning, passed, template } from '../fakes';

Element.prototype.scrollIntoView = jest.fn();

function mounted(memory = fakeMemory()) {
  const opened: Template[] = [];
  const shelf = new TemplateShelf(fakePlanning, memory);
  const list = new TemplateList({ shelf, read: fakePlanning.readTemplate, open: (one) => opened.push(one) });
  document.body.replaceChildren(list.element);
  const one = <T extends HTMLElement>(selector: string): T => list.element.querySelector<T>(selector)!;
  const titles = (): (string | null)[] => [...list.element.querySelectorAll('.rp-template strong')].map((title) => title.textContent);
  const search = (text: string): void => {
    one<HTMLInputElement>('input[type=search]').value = text;
    one('input[type=search]').dispatchEvent(new Event('input'));
  };
  const load = async (text: string, name = 'own.json'): Promise<void> => {
    const file = { name, size: text.length, text: async () => text };
    Object.defineProperty(one('input[type=file]'), 'files', { configurable: true, value: [file] });
    one('input[type=file]').dispatchEvent(new Event('change'));
    await passed();
  };
  return { list, one, titles, search, load, opened, memory };
}

const OWN = JSON.stringify(template('own', 'My own run'));

test('every template stands with title, purpose and source, and their number', () => {
  const { list, one, titles } = mounted();
  expect(titles()).toEqual(['Two points', 'Ten points']);
  expect(list.element.textContent).toContain('Zero and full scale');
  expect(list.element.textContent).toContain('a standard');
  expect(one('[role=status]').textContent).toBe('2 templates');
});

test.each([['TEN', ['Ten points']], ['full scale', ['Two points']], ['standard', ['Ten points']], ['points ten', ['Ten points']], ['nothing', []]])(
  'the search “%s” looks in title, purpose and source', (text, expected) => {
    const { search, titles, one } = mounted();
    search(text);
    expect(titles()).toEqual(expected);
    expect(one('[role=status]').textContent).toMatch(expected.length > 0 ? '1 of 2 templates' : /^No template matches “nothing”/);
  },
);

test('the one chosen is opened', () => {
  const { one, opened } = mounted();
  one('[data-template=ten]').click();
  expect(opened.map(({ id }) => id)).toEqual(['ten']);
});

test('a loaded template is listed as the user\'s own, gets the focus, and is there again later', async () => {
  const { load, titles, memory, list } = mounted();
  await load(OWN);
  expect(titles()).toEqual(['My own run', 'Two points', 'Ten points']);
  expect((document.activeElement as HTMLElement).dataset.template).toBe('own');
  expect(list.element.textContent).toContain('“My own run” is loaded.');
  expect(mounted(memory).titles()).toContain('My own run');
});

test('one with the same id takes the place of the one before, and that is said', async () => {
  const { load, titles, list } = mounted();
  await load(OWN);
  await load(JSON.stringify(template('own', 'My better run')));
  expect(titles()).toEqual(['My better run', 'Two points', 'Ten points']);
  expect(list.element.textContent).toContain('in place of the one loaded before');
});

test('where the browser keeps nothing, the template is used and that is said', async () => {
  const { load, titles, list } = mounted(fakeMemory(true));
  await load(OWN);
  expect(titles()).toContain('My own run');
  expect(list.element.textContent).toContain('forgotten when the page closes');
});

test('a refused file is told with path and expectation of each problem, and changes nothing', async () => {
  const { load, titles, one } = mounted();
  await load('no template', 'notes.txt');
  expect(one('.rp-refused').textContent).toContain('“notes.txt”');
  expect([...document.querySelectorAll('.rp-refused li')].map((line) => line.textContent)).toEqual(['runs: found "x"; expected a whole number', 'title: found nothing; expected a text']);
  expect(one('.rp-refused').getAttribute('role')).toBe('status');
  expect(titles()).toEqual(['Two points', 'Ten points']);
});

test('one of the user\'s own is removed, for later too, and the focus is not lost', async () => {
  const { load, one, titles, memory } = mounted();
  await load(OWN);
  expect(one('.rp-remove').getAttribute('aria-label')).toBe('Remove My own run');
  one('.rp-remove').click();
  expect(titles()).toEqual(['Two points', 'Ten points']);
  expect(document.activeElement).toBe(one('input[type=search]'));
  expect(mounted(memory).titles()).toEqual(['Two points', 'Ten points']);
});

test('a kept template that can no longer be read is listed with the reason, and can be removed', () => {
  const memory = fakeMemory();
  memory.set('templates', JSON.stringify(['of an older form']));
  const { one, list } = mounted(memory);
  expect(one('.rp-broken').textContent).toContain('runs: found');
  one('.rp-remove').click();
  expect(list.element.querySelector('.rp-broken')).toBeNull();
  expect(memory.get('templates')).toBe('[]');
});

test('a damaged store is as good as none', () => {
  const memory = fakeMemory();
  memory.set('templates', '{ not json');
  expect(mounted(memory).titles()).toEqual(['Two points', 'Ten points']);
});
