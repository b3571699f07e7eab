import type { SheetHost } from '../../hosts/sheetHost';
import type { SheetPlan } from '../../worksheets/plan';
import type { Answers } from '../../worksheets/question';
import type { Template } from '../../worksheets/template';
import { element } from '../dom';
import type { PaneMemory } from '../memory';
import { reasonOf } from '../reason';
import { builtView } from './builtView';
import type { Planning } from './planning';
import { withProgress } from './progress';
import { askAboutTaken } from './takenDialog';
import { TemplateForm } from './templateForm';
import { TemplateList } from './templateList';
import { TemplateShelf } from './templateShelf';
import { writeSheet } from './writeSheet';

/** What the tab needs of the pane around it. */
export interface BuildParts {
  readonly host: SheetHost;
  readonly planning: Planning;
  readonly memory: PaneMemory;
  /** Shows a cell and gives it the keyboard. */
  readonly goTo: (sheet: string, address: string) => void;
  /** Opens the tab that checks the sheet. */
  readonly check: () => void;
}

/** From a template over its questions to a sheet. */
export class BuildTab {
  readonly element = element('div', { class: 'rp-view rp-part' });
  private readonly list: TemplateList;
  private readonly work = element('div', { class: 'rp-work', attributes: { role: 'status' } });
  /** Answers by the template's text: they outlast the form, so that going back loses nothing. */
  private readonly answers = new Map<string, Answers>();

  constructor(private readonly parts: BuildParts) {
    const shelf = new TemplateShelf(parts.planning, parts.memory);
    this.list = new TemplateList({ shelf, read: (text) => parts.planning.readTemplate(text), open: (template) => this.openForm(template) });
    this.show(this.list.element);
  }

  private show(view: HTMLElement): void {
    this.element.replaceChildren(view, this.work);
  }

  private openList(from?: Template): void {
    this.show(this.list.element);
    this.list.focus(from?.id);
  }

  private openForm(template: Template): void {
    const { planning } = this.parts;
    const key = planning.templateText(template);
    const form: TemplateForm = new TemplateForm({
      template,
      planning,
      answers: this.answers.get(key) ?? planning.suggestedAnswers(template),
      onAnswers: (answers) => this.answers.set(key, answers),
      build: (plan) => this.build(template, form, plan),
      back: () => this.openList(template),
    });
    this.show(form.element);
    form.focus();
  }

  private async build(template: Template, form: TemplateForm, plan: SheetPlan): Promise<void> {
    try {
      const written = await writeSheet(this.parts.host, plan, {
        ask: (sheet, taken) => askAboutTaken(this.element, sheet, taken),
        show: (writing) => withProgress(this.work, `Building “${plan.name}” …`, writing),
      });
      if (written) this.openBuilt(template, written);
      else {
        form.say('Nothing is built. The sheet is as it was.');
        form.focusBuild();
      }
    } catch (error) {
      form.say(`The sheet is not built: ${reasonOf(error)}`, true);
      form.focusBuild();
    }
  }

  private openBuilt(template: Template, plan: SheetPlan): void {
    const { goTo, check } = this.parts;
    const view = builtView(plan, {
      fillIn: (cell) => goTo(plan.name, cell),
      check,
      questions: () => this.openForm(template),
      templates: () => this.openList(template),
    });
    this.show(view.element);
    view.focus();
  }
}
