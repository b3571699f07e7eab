/** @jest-environment jsdom */
import { createFunctionHelp } from '../../src/taskpane/functionHelp';
import { helpTexts, searchHelp, signature } from '../../src/taskpane/helpTexts';

const first = helpTexts[0];
const other = helpTexts[helpTexts.length - 1];

function mounted(onOpen?: (id?: string) => void) {
  document.body.innerHTML = '<div id="root"></div>';
  const root = document.getElementById('root') as HTMLElement;
  const help = createFunctionHelp(root, onOpen);
  const one = <T extends HTMLElement>(selector: string): T => {
    const found = root.querySelector<T>(selector);
    if (!found) throw new Error(`nothing matches ${selector}`);
    return found;
  };
  const headings = (): (string | null)[] => [...root.querySelectorAll('h2')].map((heading) => heading.textContent);
  const choices = (): (string | undefined)[] => [...root.querySelectorAll<HTMLElement>('.fh-choice')].map(({ dataset }) => dataset.function);
  const search = (text: string): void => {
    const input = one<HTMLInputElement>('input');
    input.value = text;
    input.dispatchEvent(new Event('input'));
  };
  return { root, help, one, headings, choices, search };
}

// jsdom lays nothing out, so it has no scrolling.
Element.prototype.scrollIntoView = jest.fn();

describe('the list of all functions', () => {
  test('is shown first, with every function in its group', () => {
    const { choices, headings } = mounted();
    expect(new Set(choices())).toEqual(new Set(helpTexts.map(({ id }) => id)));
    expect(new Set(headings())).toEqual(new Set(helpTexts.map(({ group }) => group)));
    expect(headings()).toHaveLength(new Set(headings()).size);
  });

  test('has a labelled search box and says how many functions there are', () => {
    const { one } = mounted();
    expect(one<HTMLInputElement>('input').labels?.[0].textContent).toBe('Search the functions');
    expect(one('.fh-count').getAttribute('role')).toBe('status');
    expect(one('.fh-count').textContent).toContain(String(helpTexts.length));
  });

  test('is narrowed by the search, in any case and with every word', () => {
    const { search, choices, one } = mounted();
    search(first.name.toUpperCase());
    expect(choices()).toContain(first.id);
    expect(choices()).toEqual(searchHelp(first.name).map(({ id }) => id));
    search(`${first.name} nosuchword`);
    expect(choices()).toEqual([]);
    expect(one('.fh-count').textContent).toContain('No function matches');
  });

  test('counts what was found', () => {
    const { search, choices, one } = mounted();
    search(`prove.${first.id}`);
    expect(one('.fh-count').textContent).toBe(`${choices().length} of ${helpTexts.length} functions`);
  });

  test('opens the function that is pressed, with the focus on its name', () => {
    const opened = jest.fn();
    const { one, headings } = mounted(opened);
    one(`[data-function="${first.id}"]`).click();
    expect(headings()).toEqual([first.name]);
    expect(document.activeElement?.textContent).toBe(first.name);
    expect(opened).toHaveBeenCalledWith(first.id);
  });

  test('opens the only function found when Enter is pressed in the search box', () => {
    const { one, search, headings } = mounted();
    const rare = helpTexts.find(({ name }) => searchHelp(name).length === 1);
    search(rare?.name ?? '');
    one('input').dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter' }));
    expect(headings()).toEqual([rare?.name]);
  });

  test('comes back with its search, and the focus on the function just read', () => {
    const opened = jest.fn();
    const { one, search, choices } = mounted(opened);
    search(first.name);
    one(`[data-function="${first.id}"]`).click();
    one('.fh-back').click();
    expect(one<HTMLInputElement>('input').value).toBe(first.name);
    expect(choices()).toContain(first.id);
    expect((document.activeElement as HTMLElement).dataset.function).toBe(first.id);
    expect(opened).toHaveBeenLastCalledWith(undefined);
  });
});

describe('the help of a function', () => {
  test.each(helpTexts.map((text) => [text.name, text] as const))('%s shows all that is written about it', (_, text) => {
    const { help, one, root } = mounted();
    help.show({ functionIds: [text.id] });
    const shown = one('article').textContent ?? '';
    for (const part of [signature(text), text.summary, text.returns, ...text.formula, ...text.source, ...text.notes]) expect(shown).toContain(part);
    expect([...root.querySelectorAll('dt code')].map((term) => term.textContent)).toEqual(text.parameters.map(({ name }) => name));
    expect([...root.querySelectorAll('dd')].map((entry) => entry.textContent)).toEqual(text.parameters.map(({ description }) => description));
    expect([...root.querySelectorAll('.fh-example-formula > code')].map((code) => code.textContent)).toEqual(text.examples.map(({ formula }) => formula));
    for (const { result } of text.examples) expect(shown).toContain(result);
  });

  test('puts optional arguments in brackets', () => {
    const text = { ...first, name: 'PROVE.X', parameters: [{ ...first.parameters[0], name: 'a', optional: false }, { ...first.parameters[0], name: 'b', optional: true }] };
    expect(signature(text)).toBe('=PROVE.X(a, [b])');
  });

  test('is shown for each function of the cell, in order', () => {
    const { help, headings } = mounted();
    help.show({ cell: 'B4', functionIds: [other.id, first.id] });
    expect(headings()).toEqual([other.name, first.name]);
  });

  test('says so if there is no function of the name', () => {
    const { help, one } = mounted();
    help.show({ cell: 'B4', functionIds: ['NOSUCH'] });
    expect(one('article').textContent).toContain('There is no function of this name');
  });

  test('of an opened function stays while cells without one are selected, and gives way to one that has', () => {
    const { help, one, headings } = mounted();
    one(`[data-function="${first.id}"]`).click();
    help.show({ cell: 'A1', functionIds: [] });
    help.show({ cell: 'A2', functionIds: [] });
    expect(headings()).toEqual([first.name]);
    help.show({ cell: 'A3', functionIds: [other.id] });
    expect(headings()).toEqual([other.name]);
  });

  test('is left alone, with the focus in it, when the same cell is told again', () => {
    const { help, one } = mounted();
    help.show({ cell: 'A1', functionIds: [first.id] });
    const article = one('article');
    one<HTMLButtonElement>('.fh-copy').focus();
    help.show({ cell: 'A1', functionIds: [first.id] });
    expect(one('article')).toBe(article);
    expect(document.activeElement).toBe(one('.fh-copy'));
  });

  test('of the cell comes back when another cell with the same function is selected', () => {
    const { help, one, headings } = mounted();
    help.show({ cell: 'A1', functionIds: [first.id] });
    one('.fh-back').click();
    help.show({ cell: 'A1', functionIds: [first.id] });
    expect(headings()).not.toEqual([first.name]);
    help.show({ cell: 'A2', functionIds: [first.id] });
    expect(headings()).toEqual([first.name]);
  });

  test('does not take the focus when the selection changes', () => {
    const { help } = mounted();
    help.show({ cell: 'A1', functionIds: [first.id] });
    expect(document.activeElement).toBe(document.body);
  });
});

describe('the cell', () => {
  test('is named, and its error told by code and words in a live region', () => {
    const { help, one } = mounted();
    help.show({ cell: 'B4', functionIds: [], error: { code: '#N/A', message: 'the class is not met' } });
    expect(one('.fh-cell').textContent).toBe('Cell B4');
    expect(one('.fh-fault').getAttribute('role')).toBe('status');
    expect(one('.fh-fault').textContent).toBe('Error in B4: #N/Athe class is not met');
  });

  test('with an error that has no words gets the meaning of its code', () => {
    const { help, one } = mounted();
    help.show({ cell: 'B4', functionIds: [], error: { code: '#DIV/0!', message: '' } });
    expect(one('.fh-fault-message').textContent).toContain('divides by zero');
  });

  test('without an error shows no callout', () => {
    const { help, one } = mounted();
    help.show({ cell: 'B4', functionIds: [], error: { code: '#N/A', message: 'x' } });
    help.show({ cell: 'B5', functionIds: [] });
    expect(one('.fh-fault').childNodes).toHaveLength(0);
  });

  test('cannot bring markup into the page', () => {
    const { help, root } = mounted();
    help.show({ cell: '<img id="bad">', functionIds: ['<b id="bad">'], error: { code: '<i id="bad">', message: '<script id="bad"></script>' } });
    expect(root.querySelector('#bad')).toBeNull();
    expect(root.textContent).toContain('<script id="bad">');
  });
});

describe('copying an example', () => {
  const answer = (): Promise<void> => new Promise((resolve) => { setTimeout(resolve, 0); });
  const withClipboard = (writeText: () => Promise<void>): void => {
    Object.defineProperty(navigator, 'clipboard', { configurable: true, value: { writeText } });
  };

  test('puts the formula on the clipboard and says so', async () => {
    const writeText = jest.fn().mockResolvedValue(undefined);
    withClipboard(writeText);
    const { help, one } = mounted();
    help.open(first.id);
    one('.fh-copy').click();
    await answer();
    expect(writeText).toHaveBeenCalledWith(first.examples[0].formula);
    expect(one('.fh-copied').textContent).toBe('Copied');
  });

  test('without permission for the clipboard selects the formula and says which keys copy it', async () => {
    withClipboard(jest.fn().mockRejectedValue(new Error('not allowed')));
    const { help, one } = mounted();
    help.open(first.id);
    one('.fh-copy').click();
    await answer();
    expect(document.getSelection()?.toString()).toBe(first.examples[0].formula);
    expect(one('.fh-copied').textContent).toContain('Ctrl+C');
  });

  test('names what it copies', () => {
    const { help, one } = mounted();
    help.open(first.id);
    expect(one('.fh-copy').getAttribute('aria-label')).toBe(`Copy example 1 of ${first.name}`);
  });
});
