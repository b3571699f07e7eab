import type { JobDesk } from './jobDesk';
import type { StepAt, StepContent } from './stepAt';
import { mainWay, missingList, sentence, ways } from './stepParts';

/** Received: date and condition stand on the Job sheet, so the way leads there. */
export function receivedStep(at: StepAt, desk: JobDesk): StepContent {
  const { job, item, state } = at;
  const first = state.missing[0] ?? { sheet: job.sheet, at: item.received.at };
  return {
    key: state,
    make: () => [
      sentence(state.missing.length > 0 ? 'These stand on the Job sheet, typed once for all sheets:' : 'Date and condition stand on the Job sheet.'),
      ...missingList(state.missing, desk),
      ways(mainWay(state.missing.length > 0 ? 'Fill in the Job sheet' : 'Go to the Job sheet', at, () => desk.goTo(first.sheet, first.at))),
    ],
  };
}
