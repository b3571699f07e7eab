import type { Missing } from '../../worksheets/job/job';
import type { WayStep } from '../../worksheets/job/jobLines';
import { button, element } from '../dom';
import type { JobDesk } from './jobDesk';
import { draftKey, type StepAt, takeBackEntry } from './stepAt';
import { isOver, placeWords, STEP_TITLES } from './stepWords';

/** As many as a person reads at once; the rest come up as these are done. */
const MOST_LISTED = 6;

let made = 0;

/** A line of words with the button that takes them; what is typed is kept until it is taken. */
interface WordsAsked {
  readonly label: string;
  readonly draft: string;
  readonly desk: JobDesk;
  /** Each takes the words as typed; Enter does the first. */
  readonly ways: readonly { readonly label: string; readonly take: (words: string) => Promise<void>; readonly main?: boolean }[];
  /** Said if nothing is typed. */
  readonly empty: string;
}

/** Makes the line. */
export function wordsLine({ label, draft, desk, ways, empty }: WordsAsked): HTMLElement {
  const id = `job-words-${made += 1}`;
  const input = element('input', { attributes: { id, type: 'text', autocomplete: 'off', 'data-key': draft, 'aria-describedby': `${id}-problem` } });
  const problem = element('p', { class: 'rp-refuse', attributes: { id: `${id}-problem`, role: 'status' } });
  input.value = desk.drafts.words(draft);
  input.addEventListener('input', () => {
    desk.drafts.keep(draft, input.value);
    if (input.value.trim() !== '') problem.textContent = '';
  });
  const takeBy = (take: (words: string) => Promise<void>): void => {
    const words = input.value.trim();
    problem.textContent = words === '' ? empty : '';
    if (words === '') input.focus();
    else void take(words);
  };
  input.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') takeBy(ways[0].take);
  });
  return element('div', { class: 'rp-words', children: [
    element('label', { class: 'rp-label', attributes: { for: id }, children: [label] }),
    input,
    problem,
    element('div', { class: 'rp-ways', children: ways.map(({ label: word, take, main }) => button(word, () => takeBy(take), main ? { class: 'rp-main' } : {})) }),
  ] });
}

/** What is missing, each a way to its cell. */
export function missingList(missing: readonly Missing[], desk: JobDesk): HTMLElement[] {
  if (missing.length === 0) return [];
  const more = missing.length - MOST_LISTED;
  return [element('ul', { class: 'rp-missing', children: missing.slice(0, MOST_LISTED).map((one) => element('li', { children: [button('', () => desk.goTo(one.sheet, one.at), {
    class: 'rp-finding',
    attributes: { 'data-key': `${one.sheet} ${one.at}` },
    children: [element('strong', { children: [placeWords(one)] }), ' ', element('span', { children: [one.message] })],
  })] })) }), ...(more > 0 ? [element('p', { class: 'rp-quiet', children: [`and ${more} more`] })] : [])];
}

/** A sentence in the body of a step. */
export function sentence(words: string): HTMLElement {
  return element('p', { children: [words] });
}

/** Buttons side by side. */
export function ways(...buttons: readonly HTMLElement[]): HTMLElement {
  return element('div', { class: 'rp-ways', children: [...buttons] });
}

/** The one button that a step is done by; it stands out where the step is the one to do now. */
export function mainWay(label: string, at: StepAt, press: () => void, isNext = at.isCurrent): HTMLButtonElement {
  return button(label, press, { ...(isNext ? { class: 'rp-main' } : {}), attributes: { 'data-key': `main ${at.state.step}` } });
}

/** Writes words into the cell of a step. */
export async function fillStep(at: StepAt, desk: JobDesk, step: WayStep, words: string): Promise<void> {
  await desk.fill(at.job.sheet, [desk.functions.stepEntry(at.item, step, words)]);
}

/** Does it, says so, and forgets the draft of the step. */
export function noteStep(at: StepAt, desk: JobDesk, step: WayStep, words: string, draft: string): Promise<void> {
  return desk.do('Writing on the Job sheet …', async () => {
    await fillStep(at, desk, step, words);
    desk.drafts.drop(draft);
    return `${STEP_TITLES[step]}: ${words}.`;
  });
}

/**
 * Below what a step is done by: a sheet that stands already, words in place of a sheet, skipping with a reason; or, where
 * something stands at the step, taking it back.
 */
export function otherWays(at: StepAt, desk: JobDesk, { sheet = false, words = false }: { readonly sheet?: boolean; readonly words?: boolean } = {}): HTMLElement[] {
  const step = at.state.step as WayStep;
  const cell = at.item.way[step];
  if (cell.value !== undefined) return [ways(button('Take it back', () => void takeBack(at, desk, step), { attributes: { 'data-key': `back ${step}` } }))];
  // Done without words of its own, as by those of another step.
  if (isOver(at.state)) return [];
  const draft = draftKey(at, `${step}.reason`);
  return [element('details', { class: 'rp-other', attributes: desk.drafts.words(draft) === '' ? {} : { open: '' }, children: [
    element('summary', { children: [words ? 'Skip, or another way' : 'Skip this step'] }),
    ...(sheet ? chooseSheet(at, desk, step) : []),
    wordsLine({
      label: words ? 'Reason, or what was done' : 'Reason',
      draft,
      desk,
      empty: 'Type the reason first.',
      ways: [
        { label: 'Skip with this reason', take: (reason) => skip(at, desk, step, reason, draft) },
        ...(words ? [{ label: 'Done in these words', take: (said: string) => noteStep(at, desk, step, said, draft) }] : []),
      ],
    }),
  ] })];
}

function skip(at: StepAt, desk: JobDesk, step: WayStep, reason: string, draft: string): Promise<void> {
  return desk.do('Writing on the Job sheet …', async () => {
    await desk.fill(at.job.sheet, [desk.functions.skipEntry(at.item, step, reason)]);
    desk.drafts.drop(draft);
    return `${STEP_TITLES[step]} is skipped: ${reason}.`;
  });
}

function takeBack(at: StepAt, desk: JobDesk, step: WayStep): Promise<void> {
  return desk.do('Writing on the Job sheet …', async () => {
    await desk.fill(at.job.sheet, [takeBackEntry(at.item, step)]);
    return `${STEP_TITLES[step]} is taken back.${at.state.sheet === undefined ? '' : ` The sheet “${at.state.sheet}” stays.`}`;
  });
}

function chooseSheet(at: StepAt, desk: JobDesk, step: WayStep): HTMLElement[] {
  const used = new Set([at.job.sheet, ...at.job.items.flatMap(({ way }) => Object.values(way).map(({ value }) => value))]);
  const free = at.sheets.filter(({ name, names }) => !used.has(name) && names.some((one) => /^(readings|typed|value)_/i.test(one.name)));
  if (free.length === 0) return [];
  const id = `job-sheet-${made += 1}`;
  const select = element('select', { attributes: { id }, children: free.map(({ name }) => element('option', { attributes: { value: name }, children: [name] })) });
  return [
    element('label', { class: 'rp-label', attributes: { for: id }, children: ['A sheet that stands already'] }),
    select,
    ways(button('Use this sheet', () => void noteStep(at, desk, step, select.value, draftKey(at, `${step}.reason`)))),
  ];
}
