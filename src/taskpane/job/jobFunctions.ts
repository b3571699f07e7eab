import type { LastResults } from '../../worksheets/comparison/lastResults';
import type { Job, JobItem, Missing, Step, StepState } from '../../worksheets/job/job';
import type { Entry, SheetPlan } from '../../worksheets/plan';
import type { Answers, Question } from '../../worksheets/question';
import type { ReadSheet } from '../../worksheets/readSheet';
import type { Difference } from '../../worksheets/record/differences';
import type { Signature } from '../../worksheets/record/planRecord';
import type { SignedRecord } from '../../worksheets/record/record';
import type { Template } from '../../worksheets/template';
import type { Planned } from '../build/planning';

/** Every sheet of a workbook as read back. */
export type Sheets = readonly ReadSheet[];

/** A step that has a cell of its own on the Job sheet. */
export type WrittenStep = Exclude<Step, 'received'>;

/** An item of a job, and the workbook it stands in. */
export interface ItemAt {
  readonly job: Job;
  readonly item: JobItem;
  readonly sheets: Sheets;
}

/** What the Job tab needs of the worksheets: pure functions, each as they are documented there. */
export interface JobFunctions {
  jobQuestions(answers: Answers): readonly Question[];
  suggestedJob(): Answers;
  planJob(answers: Answers): Planned;
  jobOf(sheets: Sheets): Job | undefined;
  answersForItem(job: Job, item: JobItem, template: Template): Answers;
  linkedToJob(plan: SheetPlan, job: Job, item: JobItem): SheetPlan;
  wayOf(job: Job, item: JobItem, sheets: Sheets): readonly StepState[];
  runOf(job: Job, item: JobItem, step: Step, sheets: Sheets): ReadSheet | undefined;
  finalRun(job: Job, item: JobItem, sheets: Sheets): ReadSheet | undefined;
  stepEntry(item: JobItem, step: WrittenStep, words: string): Entry;
  skipEntry(item: JobItem, step: WrittenStep, reason: string): Entry;
  readonly NO_ADJUSTMENT: string;
  proposedDecision(run: ReadSheet): string | undefined;
  planComparison(parts: ComparisonAsked): Planned;
  lastResults(sheets: Sheets): readonly LastResults[];
  /** What to fill into a comparison that stands already. */
  lastEntries(sheet: ReadSheet, last: readonly LastResults[]): readonly Entry[];
  missingForCertificate(parts: CertificateAsked): readonly Missing[];
  planCertificate(parts: CertificateAsked & { readonly number: string; readonly name: string; readonly issued?: number }): { readonly missing: readonly Missing[]; readonly plan?: SheetPlan };
  planRecord(sheets: Sheets, signature: Signature): SheetPlan;
  readRecord(sheets: Sheets): SignedRecord | undefined;
  differences(record: SignedRecord, sheets: Sheets): readonly Difference[];
  /** Version of the program, as records state it. */
  readonly version: string;
}

interface ComparisonAsked {
  readonly job: Job;
  readonly item: JobItem;
  readonly found: ReadSheet;
  readonly left?: ReadSheet;
  readonly last?: readonly LastResults[];
  readonly name: string;
}

interface CertificateAsked extends ItemAt {
  readonly run: ReadSheet;
  readonly comparison?: ReadSheet;
}
