import type { ReviewFinding } from '../../review/reviewFinding';
import { KIND_WORDS, SEVERITIES } from '../../review/reviewWords';
import { button, element } from '../dom';

/** Findings of a group that are shown at once: more than these a person reads sheet by sheet, and a page grows slow of them. */
const SHOWN_AT_ONCE = 100;

/** Findings in groups by severity. With `goTo`, each is a way to its cell. */
export function findingsView(findings: readonly ReviewFinding[], goTo?: (sheet: string, address: string) => void): HTMLElement[] {
  return SEVERITIES.flatMap(({ severity, title }) => {
    const members = findings.filter((finding) => finding.severity === severity);
    if (members.length === 0) return [];
    const list = element('ul', { children: members.slice(0, SHOWN_AT_ONCE).map((finding) => line(finding, goTo)) });
    return [element('section', {
      class: `rp-findings-${severity}`,
      children: [element('h3', { children: [`${title} (${members.length})`] }), list, ...rest(list, members, goTo)],
    })];
  });
}

function line(finding: ReviewFinding, goTo?: (sheet: string, address: string) => void): HTMLElement {
  const { sheet, at, kind, message } = finding;
  const children = [
    element('span', { children: [element('strong', { children: [`${sheet} ${at}`] }), ' ', element('span', { class: 'rp-quiet', children: [KIND_WORDS[kind]] })] }),
    element('span', { children: [message] }),
  ];
  if (!goTo) return element('li', { class: 'rp-review-line', children });
  return element('li', { children: [button('', () => goTo(sheet, at), {
    class: 'rp-finding rp-review-line',
    attributes: { 'data-finding': `${sheet} ${at} ${kind} ${message}` },
    children,
  })] });
}

/** The way to those beyond the first hundred. */
function rest(list: HTMLElement, members: readonly ReviewFinding[], goTo?: (sheet: string, address: string) => void): HTMLElement[] {
  const more = members.slice(SHOWN_AT_ONCE);
  if (more.length === 0) return [];
  const way = button(`Show ${more.length} more`, () => {
    const lines = more.map((finding) => line(finding, goTo));
    list.append(...lines);
    way.remove();
    lines[0].querySelector('button')?.focus();
  });
  return [way];
}
