import type { Answers, Problem, Question } from '../../worksheets/question';
import { element } from '../dom';
import { questionField, type QuestionField, sameField } from './questionField';

/** The fields of a form in their groups. They follow the questions, which follow the answers; what is being typed stays. */
export class QuestionFields {
  readonly element = element('div', { class: 'rp-questions' });
  private readonly fields = new Map<string, { question: Question; field: QuestionField }>();
  private layout = '';

  constructor(private readonly onAnswer: (id: string, answer: string) => void) {}

  /** Shows these questions, each with its answer if its field is new. */
  show(questions: readonly Question[], answers: Answers): void {
    for (const question of questions) {
      const held = this.fields.get(question.id);
      if (held && sameField(held.question, question)) held.field.update(question);
      else this.fields.set(question.id, { question, field: this.make(question, answers[question.id] ?? '') });
    }
    const layout = JSON.stringify(questions.map(({ id, group, kind, choices }) => [id, group, kind, choices]));
    if (layout !== this.layout) this.place(questions);
    this.layout = layout;
  }

  setProblems(problems: readonly Problem[]): void {
    for (const [id, { field }] of this.fields) field.setProblems(problems.filter(({ question }) => question === id));
  }

  /** The label of a question that is shown. */
  labelOf(id: string): string | undefined {
    return this.isShown(id) ? this.fields.get(id)?.question.label : undefined;
  }

  /** Puts the focus on a question's field; false if it is not shown. */
  focus(id: string): boolean {
    if (!this.isShown(id)) return false;
    const { field } = this.fields.get(id)!;
    field.focus();
    field.element.scrollIntoView({ block: 'nearest' });
    return true;
  }

  private isShown(id: string): boolean {
    return this.fields.get(id)?.field.element.isConnected ?? false;
  }

  private make(question: Question, answer: string): QuestionField {
    return questionField(question, answer, (text) => this.onAnswer(question.id, text));
  }

  private place(questions: readonly Question[]): void {
    const focused = document.activeElement as HTMLElement | null;
    const groups = new Map<string, Node[]>();
    for (const { id, group } of questions) groups.set(group, [...(groups.get(group) ?? []), this.fields.get(id)!.field.element]);
    this.element.replaceChildren(...[...groups].map(([title, members]) => element('fieldset', {
      children: [element('legend', { children: [title] }), ...members],
    })));
    // Moving an element takes the focus from it.
    if (focused && this.element.contains(focused) && document.activeElement !== focused) focused.focus();
  }
}
