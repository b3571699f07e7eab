import { review } from '../review/review';
import { planReviewSheet } from '../review/reviewSheet';
import { planCertificate } from '../worksheets/certificate/certificate';
import { missingForCertificate } from '../worksheets/certificate/missing';
import { checkSheet } from '../worksheets/check/checkSheet';
import { planComparison } from '../worksheets/comparison/comparison';
import { lastEntries } from '../worksheets/comparison/lastEntries';
import { lastResults } from '../worksheets/comparison/lastResults';
import { answersForItem } from '../worksheets/job/answersForItem';
import { proposedDecision } from '../worksheets/job/decision';
import { jobQuestions, suggestedJob } from '../worksheets/job/jobForm';
import { NO_ADJUSTMENT } from '../worksheets/job/jobTerms';
import { linkedToJob } from '../worksheets/job/linkedToJob';
import { planJob } from '../worksheets/job/planJob';
import { jobOf } from '../worksheets/job/readJob';
import { finalRun, runOf, skipEntry, stepEntry, wayOf } from '../worksheets/job/way';
import { builtInTemplates } from '../worksheets/library';
import { changedTemplate, planSheet, questions, suggestedAnswers } from '../worksheets/planner';
import { sheetPlots } from '../worksheets/plots/sheetPlots';
import { differences } from '../worksheets/record/differences';
import { planRecord } from '../worksheets/record/planRecord';
import { readRecord } from '../worksheets/record/readRecord';
import { PROGRAM_VERSION } from '../worksheets/record/version';
import { readTemplate, templateText } from '../worksheets/template';
import { isRun } from './check/isRun';
import type { PaneParts } from './pane';

/** What the pane takes from the worksheets and the review: templates and planner, the job, the check, the plots and the review. */
export const worksheetParts: Pick<PaneParts, 'planning' | 'job' | 'isRun' | 'check' | 'plots' | 'review' | 'planReviewSheet'> = {
  planning: { builtInTemplates, readTemplate, templateText, questions, suggestedAnswers, planSheet, changedTemplate },
  job: {
    jobQuestions, suggestedJob, planJob, jobOf, answersForItem, linkedToJob, wayOf, runOf, finalRun, stepEntry, skipEntry, NO_ADJUSTMENT, proposedDecision,
    planComparison, lastResults, lastEntries, missingForCertificate, planCertificate, planRecord, readRecord, differences, version: PROGRAM_VERSION,
  },
  isRun,
  check: checkSheet,
  plots: sheetPlots,
  review,
  planReviewSheet,
};
