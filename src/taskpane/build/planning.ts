import type { SheetPlan } from '../../worksheets/plan';
import type { Answers, Problem, Question } from '../../worksheets/question';
import type { Template } from '../../worksheets/template';

/** What planning a sheet comes to: the plan, unless a problem refuses. */
export interface Planned {
  readonly problems: readonly Problem[];
  readonly plan?: SheetPlan;
}

/** What the pane needs of the templates and the planner. */
export interface Planning {
  builtInTemplates(): readonly Template[];
  /** @throws an error whose `problems` say path and expectation each. */
  readTemplate(text: string): Template;
  templateText(template: Template): string;
  questions(template: Template, answers: Answers): readonly Question[];
  suggestedAnswers(template: Template): Answers;
  planSheet(template: Template, answers: Answers): Planned;
  changedTemplate(template: Template, answers: Answers): Template;
}
