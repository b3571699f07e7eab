import { button, element } from './dom';
import { helpTexts, searchHelp, type HelpText } from './helpTexts';

let made = 0;

/** The list of all functions in their groups, with a search box above it. */
export interface HelpIndex {
  readonly element: HTMLElement;
  /** Puts the focus on a function of the list, or on the search box if it is not listed. */
  focus(id?: string): void;
}

/** Makes the list; `open` is called with the id of the function a person chooses. */
export function helpIndex(open: (id: string) => void): HelpIndex {
  const inputId = `function-help-search-${made += 1}`;
  const input = element('input', { attributes: { id: inputId, type: 'search', autocomplete: 'off', spellcheck: 'false' } });
  const count = element('p', { class: 'fh-count', attributes: { role: 'status' } });
  const list = element('div', { class: 'fh-list' });
  const refresh = (): void => {
    const found = searchHelp(input.value);
    count.textContent = countText(found.length, input.value.trim());
    list.replaceChildren(...groupsOf(found).map(([group, texts]) => groupSection(group, texts, open)));
  };
  input.addEventListener('input', refresh);
  input.addEventListener('keydown', (event) => {
    const found = searchHelp(input.value);
    if (event.key === 'Enter' && found.length === 1) open(found[0].id);
  });
  refresh();
  return {
    element: element('div', {
      class: 'fh-index',
      children: [element('label', { attributes: { for: inputId }, children: ['Search the functions'] }), input, count, list],
    }),
    focus: (id) => (list.querySelector<HTMLElement>(`[data-function="${id}"]`) ?? input).focus(),
  };
}

function countText(found: number, search: string): string {
  if (found === 0) return `No function matches “${search}”. Try a shorter word, like fit or zero.`;
  const functions = found === 1 ? 'function' : 'functions';
  return search === '' ? `${found} ${functions}` : `${found} of ${helpTexts.length} functions`;
}

function groupsOf(texts: readonly HelpText[]): [string, HelpText[]][] {
  const groups = new Map<string, HelpText[]>();
  for (const help of texts) groups.set(help.group, [...(groups.get(help.group) ?? []), help]);
  return [...groups];
}

function groupSection(group: string, texts: readonly HelpText[], open: (id: string) => void): HTMLElement {
  return element('section', {
    children: [
      element('h2', { children: [group] }),
      element('ul', {
        children: texts.map((help) => {
          const choose = button('', () => open(help.id), {
            class: 'fh-choice',
            attributes: { 'data-function': help.id },
            children: [element('code', { children: [help.name] }), element('span', { children: [help.summary] })],
          });
          return element('li', { children: [choose] });
        }),
      }),
    ],
  });
}
