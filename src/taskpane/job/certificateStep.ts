import { serialOf } from '../../worksheets/check/serialDate';
import { comparisonOf } from '../../worksheets/comparison/comparisonOf';
import { sheetNameOf } from '../../worksheets/job/answersForItem';
import type { Missing } from '../../worksheets/job/job';
import type { ReadSheet } from '../../worksheets/readSheet';
import { todayText } from '../../worksheets/record/today';
import { element } from '../dom';
import type { JobDesk } from './jobDesk';
import { draftKey, lacking, nameOf, type StepAt, type StepContent } from './stepAt';
import { fillStep, mainWay, missingList, otherWays, sentence, ways } from './stepParts';
import { isOver } from './stepWords';

let made = 0;

/** Certificate: the list of what is missing, or the sheet. */
export function certificateStep(at: StepAt, desk: JobDesk): StepContent {
  const { job, item, sheets, state } = at;
  const run = desk.functions.finalRun(job, item, sheets);
  const comparison = comparisonOf(at.sheets, nameOf(at.item));
  const missing = isOver(state) ? [] : once([...lacking(at, state), ...(run ? desk.functions.missingForCertificate({ job, item, run, comparison, sheets }) : [])]);
  return {
    key: [state, at.isCurrent, item.way, run?.name, comparison?.name, missing],
    make: () => [
      ...(state.sheet !== undefined ? [ways(mainWay(`Go to “${state.sheet}”`, at, () => desk.goTo(state.sheet!, 'A1')))]
        : isOver(state) ? [] : toMake(at, desk, run, missing)),
      ...otherWays(at, desk),
    ],
  };
}

function toMake(at: StepAt, desk: JobDesk, run: ReadSheet | undefined, missing: readonly Missing[]): HTMLElement[] {
  if (!run) return [sentence('It is made of the final run, and there is none yet.'), ...missingList(missing, desk)];
  if (missing.length > 0) {
    const [first] = missing;
    return [
      sentence(`${missing.length === 1 ? 'One thing is' : `${missing.length} things are`} missing before the certificate can be made:`),
      ...missingList(missing, desk),
      ways(mainWay(`Fill in from ${first.sheet} ${first.at}`, at, () => desk.goTo(first.sheet, first.at))),
    ];
  }
  const number = field('Number of the certificate', { type: 'text', value: desk.drafts.words(draftKey(at, 'certificate.number')) || suggestedNumber(at) });
  const issued = field('Date of issue', { type: 'date', value: todayText() });
  number.input.addEventListener('input', () => desk.drafts.keep(draftKey(at, 'certificate.number'), number.input.value));
  return [
    sentence(`Made of “${run.name}”. Nothing is missing.`),
    number.element,
    issued.element,
    ways(mainWay('Build the certificate', at, () => void make(at, desk, number.input.value.trim(), serialOf(issued.input.value)))),
  ];
}

function make(at: StepAt, desk: JobDesk, number: string, issued: number | undefined): Promise<void> {
  return desk.do('Building the certificate …', async () => {
    if (number === '') throw new Error('The certificate needs a number.');
    await desk.refresh();
    const { job, item, sheets } = at;
    const run = desk.functions.finalRun(job, item, sheets);
    if (!run) throw new Error('There is no final run to make it of.');
    const comparison = comparisonOf(at.sheets, nameOf(at.item));
    const { missing, plan } = desk.functions.planCertificate({
      job, item, run, comparison, sheets, number, name: sheetNameOf(item, 'certificate'), ...(issued === undefined ? {} : { issued }),
    });
    if (!plan) throw new Error(missing.map(({ message }) => message).join('; '));
    const written = await desk.write(plan);
    if (!written) return undefined;
    await fillStep(at, desk, 'certificate', written.name);
    desk.drafts.drop(draftKey(at, 'certificate.number'));
    return `“${written.name}” is built. Look it over, then print it.`;
  });
}

function suggestedNumber({ job, item }: StepAt): string {
  const number = job.fields.number.value ?? '';
  return job.items.length > 1 ? `${number}-${item.index + 1}` : number;
}

function field(label: string, { type, value }: { readonly type: string; readonly value: string }) {
  const id = `certificate-${made += 1}`;
  const input = element('input', { attributes: { id, type, autocomplete: 'off', 'data-key': label } });
  input.value = value;
  return { input, element: element('div', { class: 'rp-words', children: [element('label', { class: 'rp-label', attributes: { for: id }, children: [label] }), input] }) };
}

/** The same thing may be missing for two reasons; it is told of once. */
function once(missing: readonly Missing[]): readonly Missing[] {
  return [...new Map(missing.map((one) => [`${one.sheet} ${one.at}`, one])).values()];
}
