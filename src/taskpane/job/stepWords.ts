import type { Missing, Step, StepState } from '../../worksheets/job/job';

/** What a step is called in the pane. */
export const STEP_TITLES: Readonly<Record<Step, string>> = {
  received: 'Received',
  inspected: 'Inspected',
  as_found: 'As found',
  adjusted: 'Adjusted or repaired',
  as_left: 'As left',
  decided: 'Decided',
  certificate: 'Certificate',
  reviewed: 'Reviewed',
};

/** The state of a step in words, with the number of things that it lacks; `isCurrent` of the one to do now. */
export function stateWords({ state, words, sheet }: StepState, lacking: number, isCurrent: boolean): string {
  const done = sheet === undefined ? words : `sheet “${sheet}”`;
  if (state === 'done') return done ? `Done: ${done}` : 'Done';
  if (state === 'skipped') return words ? `Skipped: ${words}` : 'Skipped';
  const lacks = lacking === 0 ? '' : `${lacking} missing`;
  if (sheet !== undefined) return lacks ? `Begun in “${sheet}”: ${lacks}` : `Begun in “${sheet}”`;
  if (!isCurrent) return 'Waits for an earlier step';
  return lacks ? `Next: ${lacks}` : 'Next';
}

/** How far an item has come: "3 of 8". */
export function progressWords(way: readonly StepState[]): string {
  return `${way.filter(isOver).length} of ${way.length}`;
}

/** True if nothing is left to do at a step. */
export function isOver({ state }: StepState): boolean {
  return state === 'done' || state === 'skipped';
}

/** The step to do now: the first that is not over; undefined if all are. */
export function currentStep(way: readonly StepState[]): Step | undefined {
  return way.find((state) => !isOver(state))?.step;
}

/** Where a missing entry belongs: the sheet, and the cell if the message does not name it. */
export function placeWords({ sheet, at, message }: Missing): string {
  return new RegExp(`\\b${at}\\b`).test(message) ? sheet : `${sheet} ${at}`;
}
