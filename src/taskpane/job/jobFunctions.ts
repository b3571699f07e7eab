import type { CertificateParts, PlannedCertificate } from '../../worksheets/certificate/certificate';
import type { CertificateSources } from '../../worksheets/certificate/missing';
import type { ComparisonParts } from '../../worksheets/comparison/comparison';
import type { LastResults } from '../../worksheets/comparison/lastResults';
import type { Job, JobItem, Missing, Step, StepState } from '../../worksheets/job/job';
import type { WayStep } from '../../worksheets/job/jobLines';
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
  answersForItem(job: Job, item: JobItem, template: Template, step?: Step): Answers;
  linkedToJob(plan: SheetPlan, job: Job, item: JobItem): SheetPlan;
  wayOf(job: Job, item: JobItem, sheets: Sheets): readonly StepState[];
  runOf(job: Job, item: JobItem, step: WayStep, sheets: Sheets): ReadSheet | undefined;
  finalRun(job: Job, item: JobItem, sheets: Sheets): ReadSheet | undefined;
  stepEntry(item: JobItem, step: WayStep, words: string): Entry;
  skipEntry(item: JobItem, step: WayStep, reason: string): Entry;
  readonly NO_ADJUSTMENT: string;
  /** Of the final run, and of the comparison that judges it against the tolerance of the job. */
  proposedDecision(run: ReadSheet, comparison?: ReadSheet): string | undefined;
  planComparison(parts: ComparisonParts): Planned;
  lastResults(sheets: Sheets): readonly LastResults[];
  /** What to fill into a comparison that stands already. */
  lastEntries(sheet: ReadSheet, last: readonly LastResults[], item: JobItem): readonly Entry[];
  missingForCertificate(parts: CertificateSources): readonly Missing[];
  planCertificate(parts: CertificateParts): PlannedCertificate;
  planRecord(sheets: Sheets, signature: Signature): SheetPlan;
  readRecord(sheets: Sheets): SignedRecord | undefined;
  differences(record: SignedRecord, sheets: Sheets): readonly Difference[];
  /** Version of the program, as records state it. */
  readonly version: string;
}
