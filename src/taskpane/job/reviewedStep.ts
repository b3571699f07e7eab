import type { JobDesk } from './jobDesk';
import { lacking, type StepAt, type StepContent } from './stepAt';
import { mainWay, missingList, otherWays, sentence, ways } from './stepParts';
import { isOver } from './stepWords';

/** Reviewed: the way leads to the Review tab; the step is done when the Review sheet is written. */
export function reviewedStep(at: StepAt, desk: JobDesk): StepContent {
  const { state } = at;
  return {
    key: [state, at.isCurrent, at.item.way],
    make: () => [
      ...(isOver(state) ? [] : [sentence('A second person looks the workbook over in the Review tab and writes the Review sheet; that does this step for every item whose certificate is made.')]),
      ...missingList(lacking(at, state), desk),
      ways(mainWay(isOver(state) ? 'Open the review again' : 'Open the review', at, () => desk.openReview())),
      ...otherWays(at, desk, { words: true }),
    ],
  };
}
