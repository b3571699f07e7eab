import type { SheetPlan } from './plan';
import { AnswerReader } from './planner/answerReader';
import { creepProcedure } from './planner/creepSheet';
import { historyProcedure } from './planner/historyProcedure';
import { indicationProcedure } from './planner/indicationProcedure';
import { inspectionProcedure } from './planner/inspectionProcedure';
import type { Procedure } from './planner/procedure';
import { provingProcedure } from './planner/provingSheet';
import { runProcedure } from './planner/runProcedure';
import { summingProcedure } from './planner/summingProcedure';
import { thermalProcedure } from './planner/thermalProcedure';
import type { Answers, Problem, Question } from './question';
import type { Template } from './template';

/** What becomes of a template and answers. */
export interface PlannedSheet {
  /** What is wrong with the answers, and what is unusual. */
  readonly problems: readonly Problem[];
  /** Undefined if a problem refuses. */
  readonly plan?: SheetPlan;
}

/** The questions of a template's form; units follow what is answered already. */
export function questions(template: Template, answers: Answers): readonly Question[] {
  return procedureOf(template).questions(template, answers);
}

/** An answer to every question, as the template suggests it. */
export function suggestedAnswers(template: Template): Answers {
  return procedureOf(template).suggested(template);
}

/** Plans the sheet that a template describes for these answers, or says why it cannot be. */
export function planSheet(template: Template, answers: Answers): PlannedSheet {
  const procedure = procedureOf(template);
  const reader = new AnswerReader(answers);
  const setup = procedure.read(reader, template);
  const { problems } = reader;
  if (setup === undefined || problems.some(({ severity }) => severity === 'refuse')) return { problems };
  return { problems, plan: procedure.plan(template, setup) };
}

/** The template with the answers as what it suggests, for a lab to keep. Answers that cannot be read leave it as it is. */
export function changedTemplate(template: Template, answers: Answers): Template {
  const procedure = procedureOf(template);
  const setup = procedure.read(new AnswerReader(answers), template);
  return setup === undefined ? template : procedure.changed(template, setup);
}

/** The kinds of templates. Each is asked only for templates of its own kind, which the types cannot follow. */
const PROCEDURES = { run: runProcedure, indication: indicationProcedure, creep: creepProcedure, thermal: thermalProcedure, history: historyProcedure, proving: provingProcedure, inspection: inspectionProcedure, summing: summingProcedure };

function procedureOf(template: Template): Procedure<Template, unknown> {
  return PROCEDURES[template.kind] as unknown as Procedure<Template, unknown>;
}
