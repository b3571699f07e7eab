import type { JobDesk } from './jobDesk';
import { isReadyToSign } from './signature';
import { lacking, type StepAt, type StepContent } from './stepAt';
import { mainWay, missingList, otherWays, sentence, ways } from './stepParts';
import { isOver } from './stepWords';

/** Reviewed: the way leads to the Review tab; the step is done when the Review sheet is written. What is to be reviewed is signed first. */
export function reviewedStep(at: StepAt, desk: JobDesk): StepContent {
  const { job, item, sheets, state } = at;
  const isToSign = !isOver(state) && isReadyToSign(job, sheets, desk.functions) && desk.functions.readRecord(sheets) === undefined;
  return {
    key: [state, at.isCurrent, item.way, isToSign],
    make: () => [
      ...(isOver(state) ? [] : [sentence('A second person looks the workbook over in the Review tab and writes the Review sheet. That does this step for every item that has come so far.')]),
      ...(isToSign ? [sentence('Sign the record first, below, so that the review can tell whether anything differs since.')] : []),
      ...missingList(lacking(at, state), desk),
      ways(mainWay(isOver(state) ? 'Open the review again' : 'Open the review', at, () => desk.openReview(), at.isCurrent && !isToSign)),
      ...otherWays(at, desk, { words: true }),
    ],
  };
}
