import type { Step } from '../../worksheets/job/job';
import { element } from '../dom';
import { adjustedStep } from './adjustedStep';
import { certificateStep } from './certificateStep';
import { decidedStep } from './decidedStep';
import type { JobDesk } from './jobDesk';
import { receivedStep } from './receivedStep';
import { reviewedStep } from './reviewedStep';
import { sheetStep } from './sheetStep';
import { lacking, type StepAt, type StepContent } from './stepAt';
import { STEP_TITLES, stateWords } from './stepWords';

const CONTENTS: Readonly<Record<Step, (at: StepAt, desk: JobDesk) => StepContent>> = {
  received: receivedStep, inspected: sheetStep, as_found: sheetStep, adjusted: adjustedStep,
  as_left: sheetStep, decided: decidedStep, certificate: certificateStep, reviewed: reviewedStep,
};

/** One step of the way: its name and state in a line, and below it, opened, what to do. The step to do now is open. */
export class StepRow {
  readonly element = element('li', { class: 'rp-step' });
  private readonly mark = element('span', { class: 'rp-mark', attributes: { 'aria-hidden': 'true' } });
  private readonly state = element('span', { class: 'rp-state' });
  private readonly summary: HTMLElement;
  private readonly body = element('div', { class: 'rp-step-body' });
  private readonly details: HTMLDetailsElement;
  private readonly at: Partial<StepAt> = {};
  private shown = '';
  private wasCurrent = false;

  constructor(private readonly step: Step, private readonly number: number, private readonly desk: JobDesk) {
    const words = element('span', { class: 'rp-step-words', children: [element('span', { class: 'rp-step-name', children: [STEP_TITLES[step]] }), ' ', this.state] });
    this.summary = element('summary', { attributes: { 'data-step': step }, children: [this.mark, words] });
    this.details = element('details', { children: [this.summary, this.body] });
    this.element.append(this.details);
  }

  show(at: StepAt): void {
    const { state, isCurrent } = at;
    this.element.className = `rp-step rp-step-${state.state}${isCurrent ? ' rp-step-now' : ''}`;
    if (isCurrent) this.element.setAttribute('aria-current', 'step');
    else this.element.removeAttribute('aria-current');
    this.mark.textContent = state.state === 'done' ? '✓' : state.state === 'skipped' ? '–' : String(this.number);
    this.state.textContent = stateWords(state, lacking(at, state).length, isCurrent);
    // Opened and closed as the way goes on; between that, it is the user's.
    if (isCurrent !== this.wasCurrent) this.details.open = isCurrent;
    this.wasCurrent = isCurrent;
    this.fill(CONTENTS[this.step](Object.assign(this.at, at), this.desk));
  }

  focus(): void {
    this.summary.focus();
  }

  private fill({ key, make }: StepContent): void {
    const text = JSON.stringify(key);
    if (text === this.shown) return;
    this.shown = text;
    const focused = this.body.contains(document.activeElement) ? (document.activeElement as HTMLElement).dataset.key : undefined;
    this.body.replaceChildren(...make());
    if (focused !== undefined) [...this.body.querySelectorAll<HTMLElement>('[data-key]')].find(({ dataset }) => dataset.key === focused)?.focus();
  }
}
