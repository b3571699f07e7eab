import type { Problem } from '../../worksheets/question';
import { button, element } from '../dom';

/** Milliseconds of quiet before a new count of problems is spoken: not with every key. */
const SPEAK_AFTER = 900;

/** All problems of a form in one place, each a way to its field, and their number in words. */
export class ProblemSummary {
  readonly element: HTMLDetailsElement;
  private readonly title = element('summary');
  private readonly list = element('ul', { class: 'rp-problems' });
  private readonly spoken = element('p', { class: 'rp-unseen', attributes: { role: 'status' } });
  private timer: ReturnType<typeof setTimeout> | undefined;
  private refusals = 0;

  /** @param goTo puts the focus on a question's field. */
  constructor(private readonly goTo: (question: string) => void) {
    this.element = element('details', { class: 'rp-summary', children: [this.title, this.list] });
  }

  /** Said to screen readers when the number of problems has changed; stands outside, so that it is heard when nothing is left. */
  get voice(): HTMLElement {
    return this.spoken;
  }

  /** @param labelOf the label of a question's field, if it has one. */
  show(problems: readonly Problem[], labelOf: (question: string) => string | undefined): void {
    const refusals = problems.filter(({ severity }) => severity === 'refuse');
    const ordered = [...refusals, ...problems.filter(({ severity }) => severity === 'warn')];
    const words = problemCount(problems);
    this.element.hidden = problems.length === 0;
    this.element.classList.toggle('rp-has-refusal', refusals.length > 0);
    // Opens by itself when something first stands in the way; after that it is the user's to close.
    if (refusals.length > 0 && this.refusals === 0) this.element.open = true;
    if (refusals.length === 0 && this.refusals > 0) this.element.open = false;
    this.refusals = refusals.length;
    this.title.textContent = words;
    this.list.replaceChildren(...ordered.map((problem) => this.line(problem, labelOf(problem.question))));
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      const said = words === '' ? 'Nothing to mend' : words;
      if (this.spoken.textContent !== said) this.spoken.textContent = said;
    }, SPEAK_AFTER);
  }

  private line({ severity, question, message }: Problem, label: string | undefined): HTMLElement {
    const words = element('span', { children: [element('strong', { children: [`${label ?? (severity === 'refuse' ? 'To mend' : 'Caution')}: `] }), message] });
    if (label === undefined) return element('li', { class: `rp-${severity}`, children: [words] });
    return element('li', { class: `rp-${severity}`, children: [button('', () => this.goTo(question), { children: [words] })] });
  }
}

/** "2 to mend, 1 caution", or nothing. */
export function problemCount(problems: readonly Problem[]): string {
  const refusals = problems.filter(({ severity }) => severity === 'refuse').length;
  const cautions = problems.length - refusals;
  return [
    ...(refusals > 0 ? [`${refusals} to mend`] : []),
    ...(cautions > 0 ? [`${cautions} ${cautions === 1 ? 'caution' : 'cautions'}`] : []),
  ].join(', ');
}
