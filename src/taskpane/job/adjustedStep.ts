import type { JobDesk } from './jobDesk';
import { draftKey, lacking, type StepAt, type StepContent } from './stepAt';
import { mainWay, missingList, noteStep, otherWays, sentence, ways, wordsLine } from './stepParts';
import { isOver } from './stepWords';

/** Adjusted or repaired: what was done, in words, or that nothing was; then the as-found run is final. */
export function adjustedStep(at: StepAt, desk: JobDesk): StepContent {
  const { NO_ADJUSTMENT } = desk.functions;
  const draft = draftKey(at, 'adjusted.words');
  return {
    key: [at.state, at.isCurrent, at.item.way],
    make: () => [
      ...(isOver(at.state) ? [] : [
        sentence('With no adjustment, the as-found run is the final one. After any work on the bridge an as-left run follows.'),
        ...missingList(lacking(at, at.state), desk),
        ways(mainWay('No adjustment made', at, () => void noteStep(at, desk, 'adjusted', NO_ADJUSTMENT, draft))),
        wordsLine({
          label: 'What was adjusted or repaired', draft, desk, empty: 'Type what was done first.',
          ways: [{ label: 'Write it down', take: (words) => noteStep(at, desk, 'adjusted', words, draft) }],
        }),
      ]),
      ...otherWays(at, desk),
    ],
  };
}
