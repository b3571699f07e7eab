import type { Entry, SheetPlan } from '../../worksheets/plan';
import type { ReadSheet } from '../../worksheets/readSheet';
import type { Template } from '../../worksheets/template';
import type { Building } from '../build/building';
import type { Drafts } from '../drafts';
import type { JobFunctions } from './jobFunctions';

/** What the steps of a job are done with. */
export interface JobDesk {
  readonly functions: JobFunctions;
  readonly drafts: Drafts;
  /** The templates to choose from, the user's own first. */
  templates(): readonly Template[];
  /** Shows a cell and gives it the keyboard. */
  goTo(sheet: string, address: string): void;
  /** Opens the form of a sheet. */
  build(building: Building): void;
  /** Opens the job again, from another tab. */
  openJob(): void;
  /** Opens the tab that reviews the workbook. */
  openReview(): void;
  /**
   * Does one thing at a time, with progress; says the words it comes to, or why it failed, and reads the workbook again. Without
   * words nothing was done.
   */
  do(busy: string, work: () => Promise<string | undefined>): Promise<void>;
  /** Reads the workbook anew, so that what follows knows what was typed a moment ago. */
  refresh(): Promise<void>;
  /** Puts entries into a sheet. */
  fill(sheet: string, entries: readonly Entry[]): Promise<void>;
  /** Writes a sheet, and asks first if one of its name holds something; undefined if the user left everything as it was. */
  write(plan: SheetPlan): Promise<SheetPlan | undefined>;
  /** Takes out what the workbook held for show before a job began; gives the names of those sheets. */
  makeRoom(): Promise<readonly string[]>;
  /** Asks the user something in a dialog over the page; what is being done waits for the answer. */
  ask<T>(question: (place: HTMLElement) => Promise<T>): Promise<T>;
  /** Reads a workbook file; throws if it is none. */
  readWorkbook(bytes: Uint8Array): Promise<readonly ReadSheet[]>;
}
