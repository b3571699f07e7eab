import { comparisonOf } from '../../worksheets/comparison/comparisonOf';
import { sheetNameOf } from '../../worksheets/job/answersForItem';
import type { ReadSheet } from '../../worksheets/readSheet';
import { button, element } from '../dom';
import type { JobDesk } from './jobDesk';
import { lastTimePart, lastTimeOf } from './lastTime';
import { draftKey, lacking, nameOf, type StepAt, type StepContent } from './stepAt';
import { mainWay, missingList, noteStep, otherWays, sentence, ways, wordsLine } from './stepParts';
import { isOver } from './stepWords';

/** Decided: as found and as left side by side with last time, then the decision that the final run proposes, or other words. */
export function decidedStep(at: StepAt, desk: JobDesk): StepContent {
  const { job, item, sheets, state } = at;
  const { functions } = desk;
  const comparison = comparisonOf(sheets, nameOf(item));
  const found = functions.runOf(job, item, 'as_found', sheets);
  const run = functions.finalRun(job, item, sheets);
  const proposed = run && functions.proposedDecision(run, comparison);
  const isCompared = comparison !== undefined || found === undefined;
  return {
    key: [state, at.isCurrent, item.way, comparison?.name, found?.name, run?.name, proposed],
    make: () => [
      ...missingList(lacking(at, state), desk),
      ...inOrder(comparisonPart(at, desk, comparison, found), isOver(state) ? [] : decision(at, desk, proposed, isCompared), isCompared),
      ...otherWays(at, desk),
    ],
  };
}

/** What comes next stands first. */
function inOrder(comparison: readonly HTMLElement[], decided: readonly HTMLElement[], isCompared: boolean): HTMLElement[] {
  return isCompared ? [...decided, ...comparison] : [...comparison, ...decided];
}

function comparisonPart(at: StepAt, desk: JobDesk, comparison: ReadSheet | undefined, found: ReadSheet | undefined): HTMLElement[] {
  const title = element('h4', { children: ['Comparison'] });
  if (comparison) return [title, ways(button(`Go to “${comparison.name}”`, () => desk.goTo(comparison.name, 'A1'))), lastTimePart(at, desk, comparison)];
  if (!found) return [title, sentence('It needs an as-found run, and there is none.')];
  const press = (): void => void compare(at, desk);
  const label = 'Compare as found and as left';
  return [
    title,
    sentence('As found and as left side by side: shift, in or out of tolerance, change since last time.'),
    ways(isOver(at.state) ? button(label, press) : mainWay(label, at, press)),
    lastTimePart(at, desk, undefined),
  ];
}

function compare(at: StepAt, desk: JobDesk): Promise<void> {
  return desk.do('Comparing the runs …', async () => {
    await desk.refresh();
    const { job, item, sheets } = at;
    const found = desk.functions.runOf(job, item, 'as_found', sheets);
    const left = desk.functions.runOf(job, item, 'as_left', sheets);
    if (!found) throw new Error('There is no as-found run to compare with.');
    const last = lastTimeOf(at, desk);
    const { problems, plan } = desk.functions.planComparison({
      job, item, found, name: sheetNameOf(item, 'comparison'),
      ...(left && left.name !== found.name ? { left } : {}), ...(last ? { last: last.results } : {}),
    });
    if (!plan) throw new Error(problems.map(({ message }) => message).join(' '));
    const written = await desk.write(plan);
    return written && `“${written.name}” is built.`;
  });
}

function decision(at: StepAt, desk: JobDesk, proposed: string | undefined, isNext: boolean): HTMLElement[] {
  const draft = draftKey(at, 'decided.words');
  const confirm = (words: string): void => void noteStep(at, desk, 'decided', words, draft);
  const label = `Confirm: ${proposed ?? ''}`;
  return [
    element('h4', { children: ['Decision'] }),
    ...(proposed === undefined ? [sentence('None is proposed yet: the results of the final run, its limits, or its comparison with the tolerance are not complete.')] : [
      sentence('The final run proposes this; confirm it, or decide in other words.'),
      ways(isNext ? mainWay(label, at, () => confirm(proposed)) : button(label, () => confirm(proposed))),
    ]),
    wordsLine({
      label: proposed === undefined ? 'Decision' : 'Decision in other words', draft, desk, empty: 'Type the decision first.',
      ways: [{ label: 'Decide in these words', take: (words) => noteStep(at, desk, 'decided', words, draft) }],
    }),
  ];
}
