import type { SheetContent } from '../../hosts/sheetHost';
import type { Finding } from '../../worksheets/check/checkSheet';
import { button, element } from '../dom';
import type { SheetView } from '../sheetWatch';

/** What the tab needs of the pane around it. */
interface CheckParts {
  readonly check: (content: SheetContent) => readonly Finding[];
  /** True if the sheet is one for readings at all. */
  readonly isRun: (content: SheetContent) => boolean;
  readonly goTo: (sheet: string, address: string) => void;
  /** Opens the tab that builds a sheet. */
  readonly build: () => void;
}

const GROUPS: readonly { readonly severity: Finding['severity']; readonly title: string }[] = [
  { severity: 'wrong', title: 'Wrong' },
  { severity: 'missing', title: 'Missing' },
  { severity: 'odd', title: 'Odd, look again' },
];

/** What is wrong, missing or odd in the open sheet; each finding goes to its cell. */
export class CheckTab implements SheetView {
  readonly element: HTMLElement;
  private readonly sheet = element('h2');
  private readonly count = element('p', { class: 'rp-count', attributes: { role: 'status' } });
  private readonly list = element('div', { class: 'rp-findings' });
  private shown = '';

  constructor(private readonly parts: CheckParts) {
    this.count.textContent = 'Reading the sheet …';
    this.element = element('div', { class: 'rp-scroll rp-part', children: [this.sheet, this.count, this.list] });
  }

  show(content: SheetContent): void {
    const isRun = this.parts.isRun(content);
    const findings = isRun ? this.parts.check(content) : [];
    const key = JSON.stringify([content.name, isRun, findings]);
    if (key === this.shown) return;
    this.shown = key;
    this.sheet.textContent = content.name;
    this.say(isRun ? countOf(findings) : 'This sheet has no run readings.');
    const focused = (document.activeElement as HTMLElement | null)?.dataset.finding;
    this.list.replaceChildren(...(isRun ? this.groups(content.name, findings) : [this.wayToBuild()]));
    if (focused) this.refocus(focused);
  }

  fail(words: string): void {
    this.shown = '';
    this.sheet.textContent = '';
    this.say(words);
    this.list.replaceChildren();
  }

  private say(words: string): void {
    if (this.count.textContent !== words) this.count.textContent = words;
  }

  private groups(sheet: string, findings: readonly Finding[]): HTMLElement[] {
    return GROUPS.flatMap(({ severity, title }) => {
      const members = findings.filter((finding) => finding.severity === severity);
      if (members.length === 0) return [];
      return [element('section', {
        class: `rp-findings-${severity}`,
        children: [
          element('h3', { children: [`${title} (${members.length})`] }),
          element('ul', { children: members.map((finding) => element('li', { children: [this.way(sheet, finding)] })) }),
        ],
      })];
    });
  }

  private way(sheet: string, { at, message }: Finding): HTMLElement {
    return button('', () => this.parts.goTo(sheet, at), {
      class: 'rp-finding',
      attributes: { 'data-finding': `${at} ${message}` },
      children: [element('strong', { children: [at] }), ' ', element('span', { children: [message] })],
    });
  }

  private wayToBuild(): HTMLElement {
    return element('div', {
      class: 'rp-empty',
      children: [element('p', { children: ['Open a sheet that was built here, or build one.'] }), button('Build a sheet', this.parts.build)],
    });
  }

  /** The finding that had the focus may be gone; then the next best is the first one. */
  private refocus(key: string): void {
    const ways = [...this.list.querySelectorAll<HTMLElement>('.rp-finding')];
    (ways.find(({ dataset }) => dataset.finding === key) ?? ways[0])?.focus();
  }
}

function countOf(findings: readonly Finding[]): string {
  const parts = [
    ...counted(findings, 'wrong', 'wrong'),
    ...counted(findings, 'missing', 'missing'),
    ...counted(findings, 'odd', 'odd'),
  ];
  return parts.length === 0 ? 'Nothing is missing or odd.' : parts.join(', ');
}

function counted(findings: readonly Finding[], severity: Finding['severity'], word: string): string[] {
  const count = findings.filter((finding) => finding.severity === severity).length;
  return count === 0 ? [] : [`${count} ${word}`];
}
