import { builtInTemplates } from '../library';
import { questions, suggestedAnswers } from '../planner';
import type { Template } from '../template';

/** Name of the sheet that holds the job. */
export const JOB_SHEET = 'Job';
/** Items and standards that a job has room for. */
export const MOST_ITEMS = 6;
export const MOST_STANDARDS = 5;

/** Classes that a customer may ask for: loading ranges of ASTM E74, and classes of ISO 376. */
export const CLASSES = ['AA', 'A', '00', '0.5', '1', '2'] as const;
export const DECISION_RULES = ['simple', 'guarded'] as const;
/** Directions of an item; "both" is either pair. */
export const ITEM_DIRECTIONS = ['tension', 'compression', 'clockwise', 'counter-clockwise', 'both'] as const;

/** What stands at the step "adjusted" where nothing was changed: as found is then final. */
export const NO_ADJUSTMENT = 'no adjustment made';

/** Kinds of templates that an item is calibrated by; the others look at it, or at something beside it. */
const CALIBRATING: readonly Template['kind'][] = ['run', 'indication', 'proving'];

/** The templates that a customer's procedure may be. */
export function calibrationTemplates(): readonly Template[] {
  return builtInTemplates().filter(({ kind }) => CALIBRATING.includes(kind));
}

/** Units of what is applied that a template can be planned in. */
export function unitsOf(template: Template): readonly string[] {
  const choices = questions(template, suggestedAnswers(template)).find(({ id }) => id === 'unit')?.choices ?? [];
  return choices.map(({ value }) => value);
}

/** Every unit of what is applied that some procedure can be planned in. */
export function allUnits(): readonly string[] {
  return [...new Set(calibrationTemplates().flatMap(unitsOf))];
}
