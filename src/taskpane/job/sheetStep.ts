import { hasBothStages } from '../../worksheets/job/stepSheet';
import type { Template } from '../../worksheets/template';
import type { JobDesk } from './jobDesk';
import { draftKey, lacking, nameOf, type StepAt, type StepContent } from './stepAt';
import { fillStep, mainWay, missingList, noteStep, otherWays, sentence, ways } from './stepParts';
import { isOver, STEP_TITLES } from './stepWords';

/** The steps that are done by filling in a sheet of their own. */
type SheetStep = 'inspected' | 'as_found' | 'as_left';

const ACTIONS: Readonly<Record<SheetStep, string>> = {
  inspected: 'Build the receiving inspection',
  as_found: 'Build the as-found run',
  as_left: 'Build the as-left run',
};

/** Inspected, as found, as left: a sheet of the right template is built, linked to the job and named on the Job sheet. */
export function sheetStep(at: StepAt, desk: JobDesk): StepContent {
  const { state } = at;
  const template = templateOf(at, desk);
  return {
    key: [state, at.isCurrent, template?.title, at.item.way, at.sheets.map(({ name }) => name)],
    make: () => [
      ...(state.sheet !== undefined ? begun(at, desk, state.sheet) : isOver(state) ? [] : toBuild(at, desk, template)),
      ...otherWays(at, desk, { sheet: true, words: state.step === 'inspected' }),
    ],
  };
}

function begun(at: StepAt, desk: JobDesk, sheet: string): HTMLElement[] {
  const missing = lacking(at, at.state);
  const first = missing.find((one) => one.sheet === sheet) ?? missing[0] ?? { sheet, at: 'A1' };
  const label = missing.length > 0 ? `Fill in “${sheet}”` : `Go to “${sheet}”`;
  return [...missingList(missing, desk), ways(mainWay(label, at, () => desk.goTo(first.sheet, first.at)))];
}

function toBuild(at: StepAt, desk: JobDesk, template: Template | undefined): HTMLElement[] {
  const step = at.state.step as SheetStep;
  const found = step === 'as_left' ? desk.functions.runOf(at.job, at.item, 'as_found', at.sheets) : undefined;
  if (found && hasBothStages(found)) {
    return [
      sentence(`“${found.name}” has room for both runs.`),
      ...missingList(lacking(at, at.state), desk),
      ways(mainWay('Use this sheet as left too', at, () => void noteStep(at, desk, step, found.name, draftKey(at, 'as_left.reason')))),
    ];
  }
  if (template) {
    return [
      sentence(`After the template “${template.title}”, with what the job says filled in.`),
      ...missingList(lacking(at, at.state), desk),
      ways(mainWay(ACTIONS[step], at, () => build(at, desk, step, template))),
    ];
  }
  const { at: cell, value } = at.job.fields.procedure;
  return [
    sentence(value === undefined ? 'The job does not say by which template it is run.' : `No template is called “${value}”, which the job asks for. Load it in Build, or choose another on the Job sheet.`),
    ...missingList(lacking(at, at.state), desk),
    ways(mainWay(`Choose the procedure in ${cell}`, at, () => desk.goTo(at.job.sheet, cell))),
  ];
}

function templateOf({ job, state }: StepAt, desk: JobDesk): Template | undefined {
  const wanted = job.fields.procedure.value?.trim().toLowerCase();
  return desk.templates().find((one) => (state.step === 'inspected' ? one.kind === 'inspection' : one.title.toLowerCase() === wanted));
}

function build(at: StepAt, desk: JobDesk, step: SheetStep, template: Template): void {
  const { job, item } = at;
  desk.build({
    template,
    answers: desk.functions.answersForItem(job, item, template, step),
    draft: draftKey(at, `${step}.${template.id}`),
    step: {
      title: `${nameOf(item)}: ${STEP_TITLES[step].toLowerCase()}`,
      link: (plan) => desk.functions.linkedToJob(plan, job, item),
      written: (plan) => fillStep(at, desk, step, plan.name),
      back: () => desk.openJob(),
    },
  });
}
