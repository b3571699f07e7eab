import type { SheetPlan } from '../../worksheets/plan';
import type { Answers, Problem } from '../../worksheets/question';
import type { Template } from '../../worksheets/template';
import { button, element } from '../dom';
import { reasonOf } from '../reason';
import { saveFile } from '../saveFile';
import { planPreview } from './planPreview';
import type { Planned, Planning } from './planning';
import { ProblemSummary } from './problemSummary';
import { QuestionFields } from './questionFields';

/** Milliseconds after the last key before the sheet is planned anew. */
const QUIET = 150;

/** What the form needs: the template, what was answered before, and who takes it from there. */
interface FormParts {
  readonly template: Template;
  readonly answers: Answers;
  readonly planning: Planning;
  /** Told of every answer, so that they outlast the form. */
  readonly onAnswers: (answers: Answers) => void;
  /** Builds the sheet; resolves when that has ended, one way or the other. */
  readonly build: (plan: SheetPlan) => Promise<void>;
  readonly back: () => void;
}

/** The questions of one template, their problems, the sheet that comes of the answers, and the button that builds it. */
export class TemplateForm {
  readonly element: HTMLElement;
  private answers: Answers;
  private readonly heading: HTMLElement;
  private readonly fields = new QuestionFields((id, answer) => this.answer(id, answer));
  private readonly summary = new ProblemSummary((id) => this.fields.focus(id));
  private readonly preview = element('div');
  private readonly said = element('div', { class: 'rp-said', attributes: { role: 'status' } });
  private readonly buildButton = button('Build the sheet', () => void this.build(), { class: 'rp-main' });
  private timer: ReturnType<typeof setTimeout> | undefined;
  private building = false;

  constructor(private readonly parts: FormParts) {
    const { template, back } = parts;
    this.answers = parts.answers;
    this.heading = element('h2', { attributes: { tabindex: '-1' }, children: [template.title] });
    this.element = element('div', {
      class: 'rp-form',
      children: [
        element('div', {
          class: 'rp-scroll',
          children: [
            button('‹ All templates', back, { class: 'rp-back' }),
            this.heading,
            element('p', { children: [template.purpose] }),
            element('p', { class: 'rp-source', children: [template.source] }),
            element('details', { class: 'rp-preview-box', attributes: { open: '' }, children: [element('summary', { children: ['Preview of the sheet'] }), this.preview] }),
            this.fields.element,
            element('div', { class: 'rp-save', children: [
              button('Save this template…', () => this.save()),
              element('p', { class: 'rp-help', children: ['A file with your answers as its defaults, to load again here or on another machine.'] }),
            ] }),
          ],
        }),
        element('div', { class: 'rp-bar', children: [this.summary.element, this.summary.voice, this.said, this.buildButton] }),
      ],
    });
    this.refresh();
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

  private answer(id: string, answer: string): void {
    this.answers = { ...this.answers, [id]: answer };
    this.parts.onAnswers(this.answers);
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.refresh(), QUIET);
  }

  private refresh(): Planned {
    clearTimeout(this.timer);
    const { planning, template } = this.parts;
    this.fields.show(planning.questions(template, this.answers), this.answers);
    const planned = planning.planSheet(template, this.answers);
    this.fields.setProblems(planned.problems);
    this.summary.show(planned.problems, (id) => this.fields.labelOf(id));
    this.say('');
    this.showPreview(planned.plan);
    return planned;
  }

  private showPreview(plan: SheetPlan | undefined): void {
    const { scrollLeft = 0, scrollTop = 0 } = this.preview.querySelector('.rp-preview-table') ?? {};
    this.preview.replaceChildren(plan ? planPreview(plan) : element('p', { class: 'rp-quiet', children: ['Shown once nothing is left to mend.'] }));
    this.preview.querySelector('.rp-preview-table')?.scrollTo?.(scrollLeft, scrollTop);
  }

  private async build(): Promise<void> {
    if (this.building) return;
    const { problems, plan } = this.refresh();
    if (!plan) return this.refuse('Nothing is built', problems);
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

  private save(): void {
    const { planning, template } = this.parts;
    const { problems, plan } = this.refresh();
    if (!plan) return this.refuse('The template is not saved', problems);
    try {
      const changed = planning.changedTemplate(template, this.answers);
      const name = `${changed.id}.json`;
      saveFile(name, planning.templateText(changed));
      this.say(`The template is saved as “${name}” where your downloads go.`);
    } catch (error) {
      this.say(`The template is not saved: ${reasonOf(error)}`, true);
    }
  }
}
