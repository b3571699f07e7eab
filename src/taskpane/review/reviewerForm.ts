import { serialOf } from '../../worksheets/check/serialDate';
import { button, element } from '../dom';
import type { PaneMemory } from '../memory';

const KEY = 'review.by';

/** Who reviews, and when; the name is remembered. */
export class ReviewerForm {
  readonly element: HTMLElement;
  private readonly by = element('input', { attributes: { id: 'review-by', type: 'text', autocomplete: 'name', 'aria-describedby': 'review-problem' } });
  private readonly on = element('input', { attributes: { id: 'review-on', type: 'date', 'aria-describedby': 'review-problem' } });
  private readonly problem = element('p', { class: 'rp-refuse', attributes: { id: 'review-problem', role: 'status' } });
  private readonly writeButton: HTMLButtonElement;

  /**
   * @param memory where the name is kept.
   * @param today the date that stands at first, like 2026-11-25.
   * @param write asked to write the Review sheet.
   */
  constructor(memory: PaneMemory, today: string, write: () => void) {
    this.by.value = memory.get(KEY) ?? '';
    this.by.addEventListener('input', () => {
      memory.set(KEY, this.by.value);
      this.mend(this.by);
    });
    this.on.value = today;
    this.on.addEventListener('input', () => this.mend(this.on));
    this.writeButton = button('Write the Review sheet', write, { class: 'rp-main' });
    this.element = element('section', { class: 'rp-reviewer', attributes: { 'aria-label': 'Reviewer' }, children: [
      line('Reviewed by', this.by), line('Date', this.on), this.problem, this.writeButton,
    ] });
  }

  /** Name and date, if both are there; else says what is missing and puts the focus there. */
  signature(): { readonly by: string; readonly on: number } | undefined {
    const by = this.by.value.trim();
    const on = serialOf(this.on.value);
    if (by !== '' && on !== undefined) return { by, on };
    const lacking = by === '' ? this.by : this.on;
    this.problem.textContent = by === '' ? 'Type the name of the reviewer.' : 'Type the date of the review, like 2026-11-25.';
    lacking.setAttribute('aria-invalid', 'true');
    lacking.focus();
    return undefined;
  }

  focusWrite(): void {
    this.writeButton.focus();
  }

  private mend(input: HTMLInputElement): void {
    if (input.getAttribute('aria-invalid') !== 'true') return;
    input.removeAttribute('aria-invalid');
    this.problem.textContent = '';
  }
}

function line(label: string, input: HTMLInputElement): HTMLElement {
  return element('div', { children: [element('label', { class: 'rp-label', attributes: { for: input.id }, children: [label] }), input] });
}
