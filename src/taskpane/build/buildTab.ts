import type { SheetHost } from '../../hosts/sheetHost';
import type { SheetPlan } from '../../worksheets/plan';
import type { Answers } from '../../worksheets/question';
import type { Template } from '../../worksheets/template';
import { element } from '../dom';
import { Drafts } from '../drafts';
import type { PaneMemory } from '../memory';
import { reasonOf } from '../reason';
import type { Building } from './building';
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
  private readonly drafts: Drafts;
  /** Answers by the key of their draft: on the page they outlast the sheet that was built of them. */
  private readonly answers = new Map<string, Answers>();

  constructor(private readonly parts: BuildParts) {
    const shelf = new TemplateShelf(parts.planning, parts.memory);
    this.drafts = new Drafts(parts.memory);
    this.list = new TemplateList({ shelf, read: (text) => parts.planning.readTemplate(text), open: (template) => this.openForm(this.fromList(template)) });
    this.show(this.list.element);
  }

  /** Opens the form of a sheet that is to be built, with the focus on its title. */
  open(building: Building): void {
    this.openForm(building);
  }

  private show(view: HTMLElement): void {
    this.element.replaceChildren(view, this.work);
  }

  private openList(from?: Template): void {
    this.show(this.list.element);
    this.list.focus(from?.id);
  }

  /** A template may have been changed under its id, so the key follows its text. */
  private fromList(template: Template): Building {
    const { planning } = this.parts;
    return { template, answers: planning.suggestedAnswers(template), draft: `build.${template.id}.${shortOf(planning.templateText(template))}` };
  }

  private openForm(building: Building): void {
    const { planning } = this.parts;
    const { template, draft, step } = building;
    const held = this.answers.get(draft) ?? this.drafts.answers(draft);
    const form: TemplateForm = new TemplateForm({
      template,
      planning,
      step,
      answers: { ...building.answers, ...held },
      onAnswers: (answers) => {
        this.answers.set(draft, answers);
        this.drafts.keepAnswers(draft, answers);
      },
      build: (plan) => this.build(building, form, plan),
      back: () => this.leave(building),
      ...(held ? { anew: () => this.startAgain(building) } : {}),
    });
    this.show(form.element);
    form.focus();
  }

  private leave({ template, step }: Building): void {
    this.openList(template);
    step?.back();
  }

  private startAgain(building: Building): void {
    this.answers.delete(building.draft);
    this.drafts.drop(building.draft);
    this.openForm(building);
  }

  private async build(building: Building, form: TemplateForm, plan: SheetPlan): Promise<void> {
    try {
      const written = await writeSheet(this.parts.host, plan, {
        ask: (sheet, taken) => askAboutTaken(this.element, sheet, taken),
        show: (writing) => withProgress(this.work, `Building “${plan.name}” …`, writing),
      });
      if (written) await this.finish(building, written);
      else {
        form.say('Nothing is built. The sheet is as it was.');
        form.focusBuild();
      }
    } catch (error) {
      form.say(`The sheet is not built: ${reasonOf(error)}`, true);
      form.focusBuild();
    }
  }

  private async finish(building: Building, plan: SheetPlan): Promise<void> {
    this.drafts.drop(building.draft);
    try {
      await building.step?.written(plan);
      this.openBuilt(building, plan);
    } catch (error) {
      this.openBuilt(building, plan, `The Job sheet was not told of it: ${reasonOf(error)} In the Job tab, choose this sheet for the step.`);
    }
  }

  private openBuilt(building: Building, plan: SheetPlan, problem?: string): void {
    const { goTo, check } = this.parts;
    const { template, step } = building;
    const view = builtView(plan, {
      fillIn: (cell) => goTo(plan.name, cell),
      check,
      ...(step ? { job: () => this.leave(building) } : {}),
      questions: () => this.openForm(building),
      templates: () => this.openList(template),
    }, problem);
    this.show(view.element);
    view.focus();
  }
}

/** A short text that differs where longer ones do (FNV-1a, 32 bits). */
function shortOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
  return hash.toString(36);
}
