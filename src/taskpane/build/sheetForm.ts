import type { SheetPlan } from '../../worksheets/plan';
import type { Answers, Problem, Question } from '../../worksheets/question';
import { button, element } from '../dom';
import { planPreview } from './planPreview';
import type { Planned } from './planning';
import { ProblemSummary } from './problemSummary';
import { QuestionFields } from './questionFields';

/** Milliseconds after the last key before the sheet is planned anew. */
const QUIET = 150;

/** What a form needs: what it asks, what was answered before, and who takes it from there. */
export interface SheetFormParts {
  readonly title: string;
  /** What stands above the title, and between it and the questions, and below them. */
  readonly above?: readonly HTMLElement[];
  readonly lead?: readonly HTMLElement[];
  readonly below?: readonly HTMLElement[];
  /** False leaves out the preview of the sheet. */
  readonly preview?: boolean;
  /** True: of questions that nobody has answered yet, what is to mend is told only once the button was pressed. */
  readonly patient?: boolean;
  readonly answers: Answers;
  readonly questions: (answers: Answers) => readonly Question[];
  readonly plan: (answers: Answers) => Planned;
  /** Told of every answer, so that they outlast the form. */
  readonly onAnswers: (answers: Answers) => void;
  /** The word on the button. */
  readonly action: string;
  /** Builds the sheet; resolves when that has ended, one way or the other. */
  readonly build: (plan: SheetPlan) => Promise<void>;
}

/** Questions, their problems, the sheet that comes of the answers, and the button that builds it. */
export class SheetForm {
  readonly element: HTMLElement;
  private given: Answers;
  private readonly heading: HTMLElement;
  private readonly fields = new QuestionFields((id, answer) => this.answer(id, answer));
  private readonly summary = new ProblemSummary((id) => this.fields.focus(id));
  private readonly preview = element('div');
  private readonly said = element('div', { class: 'rp-said', attributes: { role: 'status' } });
  private readonly buildButton: HTMLButtonElement;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private building = false;
  /** Questions answered here, and whether the button was pressed. */
  private readonly touched = new Set<string>();
  private tried = false;

  constructor(private readonly parts: SheetFormParts) {
    const { title, above = [], lead = [], below = [], preview = true, action } = parts;
    this.given = parts.answers;
    this.heading = element('h2', { attributes: { tabindex: '-1' }, children: [title] });
    this.buildButton = button(action, () => void this.build(), { class: 'rp-main' });
    const box = element('details', { class: 'rp-preview-box', attributes: { open: '' }, children: [element('summary', { children: ['Preview of the sheet'] }), this.preview] });
    this.element = element('div', {
      class: 'rp-form',
      children: [
        element('div', { class: 'rp-scroll', children: [...above, this.heading, ...lead, ...(preview ? [box] : []), this.fields.element, ...below] }),
        element('div', { class: 'rp-bar', children: [this.summary.element, this.summary.voice, this.said, this.buildButton] }),
      ],
    });
    this.refresh();
  }

  get answers(): Answers {
    return this.given;
  }

  focus(): void {
    this.heading.focus();
  }

  /** Shows words beside the button, like why nothing was built. */
  say(words: string, isProblem = false): void {
    this.said.className = `rp-said${isProblem ? ' rp-refused' : ''}`;
    this.said.replaceChildren(...(words ? [element('p', { children: [words] })] : []));
  }

  /** Puts the focus on the button, as after a question about the sheet was closed. */
  focusBuild(): void {
    this.buildButton.focus();
  }

  /** The sheet as answered; undefined, with the words and the focus on the first problem, if something is to mend. */
  planned(nothing: string): SheetPlan | undefined {
    this.tried = true;
    const { problems, plan } = this.refresh();
    if (!plan) this.refuse(nothing, problems);
    return plan;
  }

  private answer(id: string, answer: string): void {
    this.touched.add(id);
    this.given = { ...this.given, [id]: answer };
    this.parts.onAnswers(this.given);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.refresh(), QUIET);
  }

  private refresh(): Planned {
    clearTimeout(this.timer);
    this.fields.show(this.parts.questions(this.given), this.given);
    const planned = this.parts.plan(this.given);
    const told = planned.problems.filter(({ question }) => !this.parts.patient || this.tried || this.touched.has(question));
    this.fields.setProblems(told);
    this.summary.show(told, (id) => this.fields.labelOf(id));
    this.say('');
    this.showPreview(planned.plan);
    return planned;
  }

  private showPreview(plan: SheetPlan | undefined): void {
    if (this.parts.preview === false) return;
    const { scrollLeft = 0, scrollTop = 0 } = this.preview.querySelector('.rp-preview-table') ?? {};
    this.preview.replaceChildren(plan ? planPreview(plan) : element('p', { class: 'rp-quiet', children: ['Shown once nothing is left to mend.'] }));
    this.preview.querySelector('.rp-preview-table')?.scrollTo?.(scrollLeft, scrollTop);
  }

  private async build(): Promise<void> {
    if (this.building) return;
    const plan = this.planned('Nothing is built');
    if (!plan) return;
    this.setBuilding(true);
    try {
      await this.parts.build(plan);
    } finally {
      this.setBuilding(false);
    }
  }

  private refuse(words: string, problems: readonly Problem[]): void {
    const refusals = problems.filter(({ severity }) => severity === 'refuse');
    this.say(`${words}: ${refusals.length} to mend first.`, true);
    refusals.some(({ question }) => this.fields.focus(question));
  }

  /** Not disabled while it works, so that it keeps the focus. */
  private setBuilding(building: boolean): void {
    this.building = building;
    this.buildButton.setAttribute('aria-disabled', String(building));
  }
}
