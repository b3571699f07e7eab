import type { SheetPlan } from '../../worksheets/plan';
import type { Answers } from '../../worksheets/question';
import { button, element } from '../dom';
import { reasonOf } from '../reason';
import { saveFile } from '../saveFile';
import type { Building } from './building';
import type { Planned, Planning } from './planning';
import { SheetForm } from './sheetForm';

/** What the form needs: the template, what was answered before, and who takes it from there. */
interface FormParts extends Pick<Building, 'template' | 'answers' | 'step'> {
  readonly planning: Planning;
  /** Told of every answer, so that they outlast the form. */
  readonly onAnswers: (answers: Answers) => void;
  /** Builds the sheet; resolves when that has ended, one way or the other. */
  readonly build: (plan: SheetPlan) => Promise<void>;
  readonly back: () => void;
  /** Begins anew; left out if the answers are as suggested. */
  readonly anew?: () => void;
}

/** The questions of one template, and its file with the answers as defaults. */
export class TemplateForm {
  private readonly form: SheetForm;

  constructor(private readonly parts: FormParts) {
    const { template, planning, step, back, anew } = parts;
    this.form = new SheetForm({
      title: template.title,
      above: [button(step ? '‹ The job' : '‹ All templates', back, { class: 'rp-back' })],
      lead: [
        ...(step ? [element('p', { class: 'rp-for', children: [step.title] })] : []),
        element('p', { children: [template.purpose] }),
        element('p', { class: 'rp-source', children: [template.source] }),
        ...(anew ? [element('p', { class: 'rp-kept', children: ['Your answers from before are filled in. ', button('Start again', anew)] })] : []),
      ],
      below: [element('div', { class: 'rp-save', children: [
        button('Save this template…', () => this.save()),
        element('p', { class: 'rp-help', children: ['A file with your answers as its defaults, to load again here or on another machine.'] }),
      ] })],
      answers: parts.answers,
      questions: (answers) => planning.questions(template, answers),
      plan: (answers) => linked(planning.planSheet(template, answers), step),
      onAnswers: parts.onAnswers,
      action: 'Build the sheet',
      build: parts.build,
    });
  }

  get element(): HTMLElement {
    return this.form.element;
  }

  focus(): void {
    this.form.focus();
  }

  /** Shows words beside the button, like why nothing was built. */
  say(words: string, isProblem = false): void {
    this.form.say(words, isProblem);
  }

  /** Puts the focus on the button, as after a question about the sheet was closed. */
  focusBuild(): void {
    this.form.focusBuild();
  }

  private save(): void {
    const { planning, template } = this.parts;
    if (!this.form.planned('The template is not saved')) return;
    try {
      const changed = planning.changedTemplate(template, this.form.answers);
      const name = `${changed.id}.json`;
      saveFile(name, planning.templateText(changed));
      this.say(`The template is saved as “${name}” where your downloads go.`);
    } catch (error) {
      this.say(`The template is not saved: ${reasonOf(error)}`, true);
    }
  }
}

function linked({ problems, plan }: Planned, step: Building['step']): Planned {
  return { problems, ...(plan ? { plan: step ? step.link(plan) : plan } : {}) };
}
