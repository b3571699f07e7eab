import type { SheetPlan } from '../../worksheets/plan';
import { button, element } from '../dom';

/** Where a person may go on to after a sheet is built. */
interface BuiltWays {
  readonly fillIn: (cell: string) => void;
  readonly check: () => void;
  /** Back to the job that the sheet was built for, if there is one. */
  readonly job?: () => void;
  readonly questions: () => void;
  readonly templates: () => void;
}

/** Says what was built and what comes next, and what went wrong on the way. */
export function builtView(plan: SheetPlan, ways: BuiltWays, problem?: string): { readonly element: HTMLElement; focus(): void } {
  const heading = element('h2', { attributes: { tabindex: '-1' }, children: [`“${plan.name}” is built`] });
  const inputs = plan.cells.filter(({ role }) => role === 'input');
  const blank = inputs.find(({ value, formula }) => value === undefined && formula === undefined) ?? inputs[0];
  const formulas = plan.cells.filter(({ formula }) => formula !== undefined).length;
  return {
    element: element('div', {
      class: 'rp-scroll rp-built',
      children: [
        heading,
        element('p', { children: [`It has ${inputs.length} marked cells to fill in and ${formulas} formulas that follow them. Type the readings, or paste a column from a logger.`] }),
        ...(problem === undefined ? [] : [element('p', { class: 'rp-refuse', attributes: { role: 'status' }, children: [problem] })]),
        element('div', {
          class: 'rp-ways',
          children: [
            ...(blank ? [button(`Fill in from ${blank.at}`, () => ways.fillIn(blank.at), { class: 'rp-main' })] : []),
            button('Check readings', ways.check),
            ...(ways.job ? [button('Back to the job', ways.job)] : []),
            button('Back to the questions', ways.questions),
            button('All templates', ways.templates),
          ],
        }),
      ],
    }),
    focus: () => heading.focus(),
  };
}
