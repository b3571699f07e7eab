import type { ReadSheet } from '../readSheet';
import type { Entry } from '../plan';
import { type Job, type JobCell, type JobItem, type Missing, type StepState, STEPS } from './job';
import { type WayStep, WAY_LINES } from './jobLines';
import { NO_ADJUSTMENT } from './jobTerms';
import { hasBothStages, missingOnSheet, sheetCalled } from './stepSheet';

const SKIPPED = /^skipped\b\s*[:,–-]?\s*(.*)$/is;
const UNCHANGED = new RegExp(`^${NO_ADJUSTMENT}\\b`, 'i');
/** Steps that words alone cannot stand for: their sheet is what the rest is made from. */
const NEEDS_SHEET: readonly WayStep[] = ['as_found', 'as_left', 'certificate'];

/** A step as its own cell and sheet tell it, whatever comes before. */
type OwnState = Omit<StepState, 'step' | 'state'> & { readonly state: 'done' | 'skipped' | 'open' };

/**
 * How far an item has come, step by step. A step waits while an earlier one is neither done nor skipped. One that names a sheet
 * is done when nothing is missing there.
 */
export function wayOf(job: Job, item: JobItem, sheets: readonly ReadSheet[]): readonly StepState[] {
  let waits = false;
  return STEPS.map((step): StepState => {
    const own = step === 'received' ? received(job, item) : ownState(job, item, step, sheets);
    const state = own.state === 'open' && waits ? 'waiting' : own.state;
    waits ||= own.state === 'open';
    return { ...own, step, state };
  });
}

/** The sheet that the cell of a step names, if it is there. */
export function runOf(_job: Job, item: JobItem, step: WayStep, sheets: readonly ReadSheet[]): ReadSheet | undefined {
  return sheetCalled(sheets, item.way[step].value);
}

/**
 * The run that the results are taken from: as left; as found where nothing was adjusted, or the run as left was skipped.
 * Undefined while that is not there.
 */
export function finalRun(job: Job, item: JobItem, sheets: readonly ReadSheet[]): ReadSheet | undefined {
  const left = runOf(job, item, 'as_left', sheets);
  if (left) return left;
  return isFoundFinal(item) ? runOf(job, item, 'as_found', sheets) : undefined;
}

/** What a step's cell is to hold: the name of a sheet, or words on what was done; nothing empties it. */
export function stepEntry(item: JobItem, step: WayStep, words: string): Entry {
  return { at: item.way[step].at, value: words.trim() === '' ? null : words.trim() };
}

/** What a step's cell is to hold if the step is skipped. */
export function skipEntry(item: JobItem, step: WayStep, reason: string): Entry {
  return { at: item.way[step].at, value: `skipped: ${reason.trim()}` };
}

function isFoundFinal({ way }: JobItem): boolean {
  if (way.as_left.value === undefined) return UNCHANGED.test(way.adjusted.value ?? '');
  return SKIPPED.test(way.as_left.value);
}

function received(job: Job, { received: date, condition }: JobItem): OwnState {
  const missing = [
    ...emptyCell(job, date, 'the date of receipt, like 2026-11-25'),
    ...emptyCell(job, condition, 'the condition as received'),
  ];
  return { state: missing.length > 0 ? 'open' : 'done', missing, ...(condition.value === undefined ? {} : { words: condition.value }) };
}

function emptyCell(job: Job, { at, value }: JobCell, expected: string): Missing[] {
  return value === undefined ? [{ sheet: job.sheet, at, message: `${at} is empty or cannot be read; expected ${expected}` }] : [];
}

function ownState(job: Job, item: JobItem, step: WayStep, sheets: readonly ReadSheet[]): OwnState {
  const cell = item.way[step];
  const { value } = cell;
  const expected = `${WAY_LINES.find((line) => line.step === step)?.expected}, or “skipped:” and why`;
  const open = (message: string): OwnState => ({ state: 'open', missing: [{ sheet: job.sheet, at: cell.at, message }] });
  if (value === undefined) return step === 'as_left' && isFoundFinal(item) ? unchanged(job, item, sheets) : open(`${cell.at} is empty; expected ${expected}`);
  const skipped = SKIPPED.exec(value);
  if (skipped) return skipped[1].trim() === '' ? open(`${cell.at} says “${value}”; expected why it is skipped, after a colon`) : { state: 'skipped', words: skipped[1].trim(), missing: [] };
  const sheet = sheetCalled(sheets, value);
  if (sheet === undefined || sheet.name === job.sheet) {
    return NEEDS_SHEET.includes(step) ? open(`${cell.at} holds “${value}”, which is no sheet of it in this workbook; expected ${expected}`) : { state: 'done', words: value, missing: [] };
  }
  if (step === 'as_left' && sheet === runOf(job, item, 'as_found', sheets) && !hasBothStages(sheet)) {
    return { ...open(`${cell.at} names the run as found; expected a run of its own, or “${NO_ADJUSTMENT}” at the step before`), sheet: sheet.name };
  }
  const missing = missingOnSheet(sheet, step);
  return { state: missing.length > 0 ? 'open' : 'done', sheet: sheet.name, missing };
}

/** As left where nothing was adjusted: the run as found is final, and done when that is. */
function unchanged(job: Job, item: JobItem, sheets: readonly ReadSheet[]): OwnState {
  const found = ownState(job, item, 'as_found', sheets);
  const words = `${NO_ADJUSTMENT}: as found is final`;
  if (found.state === 'done') return { ...found, words };
  const { at } = item.way.as_found;
  const message = found.state === 'skipped' ? `${at} says that as found was skipped, so no run is final; expected the sheet of a run as left` : `The run as found, ${at}, is not complete; with “${NO_ADJUSTMENT}” it is final`;
  return { state: 'open', words, missing: [{ sheet: job.sheet, at, message }] };
}
