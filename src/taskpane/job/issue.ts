import type { SheetContent } from '../../hosts/sheetHost';
import type { Review } from '../../review/reviewFinding';
import type { Job } from '../../worksheets/job/job';
import type { JobFunctions } from './jobFunctions';
import type { SignatureState } from './signature';
import { nameOf } from './stepAt';
import { isOver, STEP_TITLES } from './stepWords';

/** What speaks against handing the workbook out, a sentence each: steps that are open, what the review finds, a record that no longer fits. */
export function speaksAgainst(job: Job, sheets: readonly SheetContent[], functions: JobFunctions, review: (sheets: readonly SheetContent[]) => Review, { isSigned, isFresh, words }: SignatureState): string[] {
  const open = job.items.flatMap((item) => {
    const steps = functions.wayOf(job, item, sheets).filter((state) => !isOver(state)).map(({ step }) => STEP_TITLES[step].toLowerCase());
    return steps.length === 0 ? [] : [`${nameOf(item)}: not done yet: ${steps.join(', ')}.`];
  });
  const wrong = review(sheets).findings.filter(({ severity }) => severity === 'wrong');
  const [first] = wrong;
  return [
    ...(job.items.length === 0 ? ['No item has a name.'] : []),
    ...open,
    ...(first ? [`The review finds ${wrong.length} wrong, first ${first.sheet} ${first.at}: ${first.message}.`] : []),
    ...(isSigned && !isFresh ? [`${words} It is signed again with the copy.`] : []),
  ];
}

/** The name of the copy's file, without what no file's name has. */
export function issueFileName(job: Job): string {
  const number = (job.fields.number.value ?? '').replace(/[\\/:*?"<>|\p{Cc}]/gu, ' ').replace(/\s+/g, ' ').trim();
  return `${number === '' ? 'Job' : `Job ${number}`}, issue copy.xlsx`;
}
