import { withInventedReadings } from './data/inventedReadings';
import { builtInTemplates } from './library';
import type { SheetPlan } from './plan';
import { planSheet, suggestedAnswers } from './planner';

/** The sheet of a template as it comes ready: empty, and with invented readings. */
export interface ReadySheet {
  /** Id of the template. */
  readonly id: string;
  readonly empty: SheetPlan;
  readonly filled: SheetPlan;
}

/** A sheet of every template, with the answers that the template suggests. */
export function readySheets(): readonly ReadySheet[] {
  return builtInTemplates().map((template) => {
    const { plan, problems } = planSheet(template, suggestedAnswers(template));
    if (!plan) throw new Error(`${template.id}: ${problems.map(({ question, message }) => `${question}: ${message}`).join(' ')}`);
    return { id: template.id, empty: plan, filled: withInventedReadings(plan) };
  });
}
