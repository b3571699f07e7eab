import type { Template } from '../../worksheets/template';
import { button, element } from '../dom';
import { FileRefused, templateFromFile } from './templateFile';
import type { OwnTemplate, TemplateShelf } from './templateShelf';

let made = 0;

/** What the list needs: where templates stand, how a text becomes one, and who opens the one chosen. */
interface ListParts {
  readonly shelf: TemplateShelf;
  readonly read: (text: string) => Template;
  readonly open: (template: Template) => void;
}

/** The templates to choose from, with a search box above them and a way to load one from a file. */
export class TemplateList {
  readonly element: HTMLElement;
  private readonly input: HTMLInputElement;
  private readonly count = element('p', { class: 'rp-quiet', attributes: { role: 'status' } });
  private readonly list = element('div', { class: 'rp-templates' });
  private readonly said = element('div', { class: 'rp-said', attributes: { role: 'status' } });
  private readonly file = element('input', { attributes: { type: 'file', accept: '.json,application/json', hidden: '', 'aria-label': 'Template file' } });
  private readonly loadButton = button('Load a template…', () => this.file.click());

  constructor(private readonly parts: ListParts) {
    const id = `template-search-${made += 1}`;
    this.input = element('input', { attributes: { id, type: 'search', autocomplete: 'off', spellcheck: 'false' } });
    this.input.addEventListener('input', () => this.refresh());
    this.file.addEventListener('change', () => void this.load());
    this.element = element('div', {
      class: 'rp-scroll',
      children: [
        element('p', { class: 'rp-lead', children: ['Choose the run. A new sheet is made for it, with cells for the readings and every result beside its formula.'] }),
        element('label', { class: 'rp-label', attributes: { for: id }, children: ['Search the templates'] }),
        this.input,
        this.count,
        this.list,
        element('div', { class: 'rp-load', children: [this.loadButton, this.file] }),
        this.said,
      ],
    });
    this.refresh();
  }

  /** Puts the focus on a template, or on the search box if it is not listed. */
  focus(id?: string): void {
    const chosen = [...this.list.querySelectorAll<HTMLElement>('.rp-template')].find(({ dataset }) => dataset.template === id);
    (chosen ?? this.input).focus();
  }

  private refresh(): void {
    const search = this.input.value.trim();
    const { builtIn } = this.parts.shelf;
    const own = this.parts.shelf.own();
    const found = builtIn.filter((template) => matches(template, search));
    const foundOwn = own.filter(({ template }) => (template ? matches(template, search) : search === ''));
    this.count.textContent = countText(found.length + foundOwn.length, builtIn.length + own.length, search);
    this.list.replaceChildren(
      ...this.section('Your templates', foundOwn.map((entry) => this.ownItem(entry))),
      ...this.section(foundOwn.length > 0 ? 'Ready templates' : '', found.map((template) => element('li', { children: [this.choice(template)] }))),
    );
  }

  private section(title: string, items: readonly HTMLElement[]): HTMLElement[] {
    if (items.length === 0) return [];
    return [...(title ? [element('h2', { children: [title] })] : []), element('ul', { children: items })];
  }

  private choice(template: Template): HTMLElement {
    return button('', () => this.parts.open(template), {
      class: 'rp-template',
      attributes: { 'data-template': template.id },
      children: [
        element('strong', { children: [template.title] }),
        element('span', { children: [template.purpose] }),
        element('span', { class: 'rp-source', children: [template.source] }),
      ],
    });
  }

  private ownItem({ text, template, problem }: OwnTemplate): HTMLElement {
    const title = template?.title ?? 'A template that cannot be read';
    const remove = button('Remove', () => this.remove(text, title), { class: 'rp-remove', attributes: { 'aria-label': `Remove ${title}` } });
    const words = template ? this.choice(template) : element('div', { class: 'rp-broken', children: [element('strong', { children: [title] }), element('span', { children: [problem ?? ''] })] });
    return element('li', { class: 'rp-own', children: [words, remove] });
  }

  private remove(text: string, title: string): void {
    this.parts.shelf.remove(text);
    this.refresh();
    this.say(`“${title}” is removed. Its file is where you loaded it from.`);
    this.input.focus();
  }

  private async load(): Promise<void> {
    const file = this.file.files?.[0];
    if (!file) return;
    try {
      const template = await templateFromFile(file, this.parts.read);
      const { replaced, kept } = this.parts.shelf.add(template);
      this.input.value = '';
      this.refresh();
      this.say([
        `“${template.title}” is loaded${replaced ? ' in place of the one loaded before' : ''}.`,
        kept ? '' : ' It is forgotten when the page closes: this browser keeps nothing for it.',
      ].join(''));
      this.focus(template.id);
    } catch (error) {
      if (!(error instanceof FileRefused)) throw error;
      this.refuse(error);
    } finally {
      // Else the same file, mended, would be no change.
      this.file.value = '';
    }
  }

  private say(words: string): void {
    this.said.className = 'rp-said';
    this.said.replaceChildren(element('p', { children: [words] }));
  }

  private refuse({ message, problems }: FileRefused): void {
    this.said.className = 'rp-said rp-refused';
    this.said.replaceChildren(
      element('p', { children: [message] }),
      ...(problems.length > 0 ? [element('ul', { children: problems.map((problem) => element('li', { children: [problem] })) })] : []),
    );
    this.said.scrollIntoView({ block: 'nearest' });
  }
}

function matches({ title, purpose, source }: Template, search: string): boolean {
  const content = [title, purpose, source].join(' ').toLowerCase();
  return search.toLowerCase().split(/\s+/).every((word) => content.includes(word));
}

function countText(found: number, all: number, search: string): string {
  if (found === 0) return `No template matches “${search}”. Try a shorter word, like force or creep.`;
  return search === '' ? `${all} ${all === 1 ? 'template' : 'templates'}` : `${found} of ${all} templates`;
}
