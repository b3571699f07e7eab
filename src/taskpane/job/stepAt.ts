import { FilledSheet } from '../../worksheets/filledSheet';
import type { JobItem, StepState } from '../../worksheets/job/job';
import type { Entry } from '../../worksheets/plan';
import type { ReadSheet } from '../../worksheets/readSheet';
import type { ItemAt, Sheets, WrittenStep } from './jobFunctions';

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
export function takeBackEntry(item: JobItem, step: WrittenStep): Entry {
  return { at: item.way[step].at, value: null };
}

/** The sheet in which a name of its own holds this word, like the comparison of an item. */
export function sheetWith(sheets: Sheets, name: string, word: string): ReadSheet | undefined {
  return sheets.find((sheet) => new FilledSheet(sheet).text(name)?.toLowerCase() === word.toLowerCase());
}

/** A name for a sheet of an item, like "Cell A as found", of 31 characters at most and without those that no sheet's name has. */
export function itemSheetName(item: JobItem, word: string): string {
  const name = nameOf(item).replace(/[\\/?*[\]:']/g, ' ').slice(0, 30 - word.length).trim();
  return `${name} ${word}`.trim();
}
