import type { JobItem, Missing, StepState } from '../../worksheets/job/job';
import type { Entry } from '../../worksheets/plan';
import type { WayStep } from '../../worksheets/job/jobLines';
import type { ItemAt } from './jobFunctions';

/** A step of an item, and how far it has come. What is pressed later reads it then, when more may have been typed. */
export interface StepAt extends ItemAt {
  readonly state: StepState;
  /** True of the step to do now. */
  readonly isCurrent: boolean;
}

/** What stands in the body of a step. */
export interface StepContent {
  /** Differs where the elements would. */
  readonly key: unknown;
  readonly make: () => readonly HTMLElement[];
}

/** The key under which what is begun for a step is kept. */
export function draftKey({ job, item }: Pick<ItemAt, 'job' | 'item'>, of: string): string {
  return `job.${job.fields.number.value ?? ''}.${item.index}.${of}`;
}

/** What an item is called. */
export function nameOf(item: JobItem): string {
  return item.name.value ?? `Item ${item.index + 1}`;
}

/** The entry that empties the cell of a step. */
export function takeBackEntry(item: JobItem, step: WayStep): Entry {
  return { at: item.way[step].at, value: null };
}

/** What is missing at a step, apart from its own empty cell, which doing the step fills. */
export function lacking({ job, item }: Pick<ItemAt, 'job' | 'item'>, { step, missing }: StepState): readonly Missing[] {
  const own = step === 'received' ? undefined : item.way[step];
  return own === undefined || own.value !== undefined ? missing : missing.filter(({ sheet, at }) => sheet !== job.sheet || at !== own.at);
}
