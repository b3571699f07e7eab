import type { PlannedSheet } from '../planner';
import type { Answers } from '../question';
import { readJobAnswers } from './jobForm';
import { jobSheet } from './jobSheet';

/** Plans the sheet of a new job for these answers, or says why it cannot be. */
export function planJob(answers: Answers): PlannedSheet {
  const { problems, job } = readJobAnswers(answers);
  return job ? { problems, plan: jobSheet(job) } : { problems };
}
