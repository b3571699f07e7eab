import { element } from '../dom';
import { SheetForm } from '../build/sheetForm';
import type { JobDesk } from './jobDesk';

const DRAFT = 'job.start';

/** What is shown while the workbook has no job: what a job is, and the few questions that begin one. */
export function jobStart(desk: JobDesk): { readonly element: HTMLElement; focus(): void } {
  const { functions, drafts } = desk;
  const form: SheetForm = new SheetForm({
    title: 'Start a job',
    lead: [
      element('p', { children: ['A job carries an order from receipt to the signed certificate. What is said once stands on a Job sheet, and this tab shows the next step of every item.'] }),
      element('p', { class: 'rp-help', children: ['Only what the sheets are made of is asked here; the rest is typed on the Job sheet. For a single sheet without a job, go to Build.'] }),
    ],
    preview: false,
    patient: true,
    answers: { ...functions.suggestedJob(), ...drafts.answers(DRAFT) },
    questions: (answers) => functions.jobQuestions(answers),
    plan: (answers) => functions.planJob(answers),
    onAnswers: (answers) => drafts.keepAnswers(DRAFT, answers),
    action: 'Start the job',
    build: (plan) => desk.do('Writing the Job sheet …', async () => {
      const written = await desk.write(plan);
      if (!written) {
        form.focusBuild();
        return 'Nothing is written. The sheet is as it was.';
      }
      drafts.drop(DRAFT);
      const gone = await desk.makeRoom();
      return `“${written.name}” is written.${gone.length === 0 ? '' : ' The sheets of the first workbook, which nobody changed, are out of it; “First workbook…” brings them back.'}`;
    }),
  });
  return form;
}
