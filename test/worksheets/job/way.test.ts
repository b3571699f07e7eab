import { inventedJobSheet } from '../../../src/worksheets/data/inventedJob';
import { withInventedReadings } from '../../../src/worksheets/data/inventedReadings';
import { STEPS } from '../../../src/worksheets/job/job';
import { NO_ADJUSTMENT } from '../../../src/worksheets/job/jobTerms';
import type { WayStep } from '../../../src/worksheets/job/jobLines';
import { finalRun, runOf, skipEntry, stepEntry, wayOf } from '../../../src/worksheets/job/way';
import type { Entry, SheetPlan } from '../../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../../src/worksheets/planner';
import type { ReadSheet } from '../../../src/worksheets/readSheet';
import { asRead, cellOf, firstItem, job, template, typed } from './jobSheets';

function plan(id: string, sheet: string): SheetPlan {
  return planSheet(template(id), { ...suggestedAnswers(template(id)), sheet }).plan!;
}

const filled = (id: string, sheet: string) => asRead(withInventedReadings(plan(id, sheet)));
const found = filled('two-point', 'Cell A as found');
const left = filled('two-point', 'Cell A as left');
const empty = asRead(plan('two-point', 'Cell A as left'));
const other = (name: string, ...names: string[]): ReadSheet => ({ name, cells: [], names: names.map((one) => ({ name: one, range: 'A1' })) });
const certificate = other('Certificate 1', 'certificate_number');

function at(step: WayStep, value: string | null): Entry {
  return { at: cellOf(inventedJobSheet(), `way_${step}`), value };
}

/** Address of a step’s cell of the first item. */
const of = (step: WayStep) => at(step, null).at;

function way(entries: readonly Entry[], ...sheets: ReadSheet[]) {
  const own = job(entries);
  return new Map(wayOf(own, firstItem(own), sheets).map((state) => [state.step, state]));
}

function states(entries: readonly Entry[], ...sheets: ReadSheet[]): string[] {
  return [...way(entries, ...sheets).values()].map(({ step, state }) => `${step} ${state}`);
}

function missing(step: WayStep | 'received', entries: readonly Entry[], ...sheets: ReadSheet[]): string[] {
  return way(entries, ...sheets).get(step)!.missing.map(({ sheet, at: cell, message }) => `${sheet}!${cell} ${message}`);
}

const RUNS = [at('inspected', 'looked at, good'), at('as_found', 'Cell A as found'), at('adjusted', 'span trimmed'), at('as_left', 'cell a AS LEFT')];

test('at first the item is received, the inspection is open, and the rest waits for it', () => {
  expect(states([])).toEqual(['received done', 'inspected open', 'as_found waiting', 'adjusted waiting', 'as_left waiting', 'decided waiting', 'certificate waiting', 'reviewed waiting']);
  expect(missing('inspected', [])).toEqual([`Job!${of('inspected')} ${of('inspected')} is empty; expected the inspection’s sheet, or words on what was seen, or “skipped:” and why`]);
});

test('an item without date or condition is not received, and everything waits', () => {
  const entries = [{ at: cellOf(inventedJobSheet(), 'item_received'), value: 'Monday' }, { at: cellOf(inventedJobSheet(), 'item_condition'), value: null }];
  expect(states(entries)[0]).toBe('received open');
  expect(states(entries).slice(1).every((state) => state.endsWith('waiting'))).toBe(true);
  expect(missing('received', entries)).toEqual([
    `Job!${entries[0].at} ${entries[0].at} is empty or cannot be read; expected the date of receipt, like 2026-11-25`,
    `Job!${entries[1].at} ${entries[1].at} is empty or cannot be read; expected the condition as received`,
  ]);
});

test('a whole way is done, each step with its sheet or its words', () => {
  const entries = [...RUNS, at('decided', 'fit for use'), at('certificate', 'Certificate 1'), at('reviewed', 'Review')];
  const all = way(entries, found, left, certificate, other('Review', 'review_outcome'));
  expect([...all.values()].map(({ state }) => state)).toEqual(STEPS.map(() => 'done'));
  expect([...all.values()].map(({ sheet, words }) => sheet ?? words)).toEqual([
    'clean, cable rubbed near the gland', 'looked at, good', 'Cell A as found', 'span trimmed', 'Cell A as left', 'fit for use', 'Certificate 1', 'Review',
  ]);
});

test('a step done out of turn is done, and what lies between is open and waits', () => {
  expect(states([at('decided', 'not fit for use')])).toEqual(['received done', 'inspected open', 'as_found waiting', 'adjusted waiting', 'as_left waiting', 'decided done', 'certificate waiting', 'reviewed waiting']);
});

test.each(['skipped: new from the maker', 'Skipped : new from the maker', 'SKIPPED – new from the maker', 'skipped new from the maker'])('“%s” skips a step with its reason', (text) => {
  expect(way([at('inspected', text)]).get('inspected')).toEqual({ step: 'inspected', state: 'skipped', words: 'new from the maker', missing: [] });
});

test('a step skipped without a reason is open', () => {
  expect(missing('inspected', [at('inspected', 'skipped:')])).toEqual([`Job!${of('inspected')} ${of('inspected')} says “skipped:”; expected why it is skipped, after a colon`]);
});

test('a run without its readings is open, and what is missing names sheet and cell', () => {
  const [first, ...rest] = missing('as_left', RUNS, found, empty);
  expect(first).toMatch(/^Cell A as left!\w+ No readings yet: the first belongs in \w+$/);
  expect(rest).toEqual([]);
  expect(way(RUNS, found, empty).get('as_left')).toMatchObject({ state: 'open', sheet: 'Cell A as left' });
});

test('one reading that is missing, or is no number, keeps a run open', () => {
  const made = withInventedReadings(plan('two-point', 'Cell A as left'));
  const cell = cellOf(made, 'readings_tension').replace(/\d+$/, (row) => String(Number(row) + 1));
  const [one] = missing('as_left', RUNS, found, asRead(typed(made, [{ at: cell, value: null }])));
  expect(one).toContain(`Cell A as left!${cell} `);
  expect(missing('as_left', RUNS, found, asRead(typed(made, [{ at: cell, value: '2,001' }])))).toEqual([
    expect.stringContaining(`${cell} holds the text “2,001”, which looks like a number but is text`),
  ]);
});

test('the name of a run that is no longer there does not stand for it', () => {
  expect(missing('as_left', RUNS, found)).toEqual([`Job!${of('as_left')} ${of('as_left')} holds “cell a AS LEFT”, which is no sheet of it in this workbook; expected the run’s sheet, or “skipped:” and why`]);
});

test('the run as found is not its own run as left', () => {
  expect(missing('as_left', [...RUNS, at('as_left', 'Cell A as found')], found)).toEqual([`Job!${of('as_left')} ${of('as_left')} names the run as found; expected a run of its own, or “no adjustment made” at the step before`]);
});

test('a sheet without readings is no run, and one without its number is no certificate', () => {
  expect(missing('as_found', [...RUNS, at('as_found', 'Notes')], other('Notes'))).toEqual(['Notes!A1 The sheet “Notes” has no place for readings; expected the sheet of a run or an inspection']);
  expect(missing('certificate', [at('certificate', 'Notes')], other('Notes'))).toEqual(['Notes!A1 The sheet “Notes” is no certificate']);
});

test('where nothing was adjusted, the run as found is final and as left is done with it', () => {
  const entries = [at('inspected', 'good'), at('as_found', 'Cell A as found'), at('adjusted', 'No adjustment made, within tolerance')];
  expect(way(entries, found).get('as_left')).toEqual({ step: 'as_left', state: 'done', sheet: 'Cell A as found', words: 'no adjustment made: as found is final', missing: [] });
  const own = job(entries);
  expect(finalRun(own, firstItem(own), [left, found])?.name).toBe('Cell A as found');
});

test('without a run as found, “no adjustment made” leaves no final run', () => {
  const entries = [at('inspected', 'good'), at('as_found', 'skipped: cable broken'), at('adjusted', NO_ADJUSTMENT)];
  expect(missing('as_left', entries)).toEqual([`Job!${of('as_found')} ${of('as_found')} says that as found was skipped, so no run is final; expected the sheet of a run as left`]);
  const own = job(entries);
  expect(finalRun(own, firstItem(own), [])).toBeUndefined();
});

test('the final run is the one as left, or the one as found if as left was skipped', () => {
  const own = (entries: readonly Entry[]) => job([...RUNS, ...entries]);
  const final = (entries: readonly Entry[]) => finalRun(own(entries), firstItem(own(entries)), [found, left])?.name;
  expect([final([]), final([at('as_left', 'skipped: replaced')]), final([at('as_left', null)])]).toEqual(['Cell A as left', 'Cell A as found', undefined]);
});

describe('a sheet with both stages in itself', () => {
  const both = withInventedReadings(plan('system', 'Cell A'));
  const entries = [at('inspected', 'good'), at('as_found', 'Cell A'), at('adjusted', 'scale set'), at('as_left', 'Cell A')];
  const emptied = (stage: string) => {
    const range = both.names!.find(({ name }) => name === `readings_as_${stage}`)!.range;
    const [, left1, top, right, bottom] = /^([A-Z])(\d+):([A-Z])(\d+)$/.exec(range)!;
    return asRead(typed(both, both.cells.filter(({ at: cell }) => {
      const [, letter, row] = /^([A-Z]+)(\d+)$/.exec(cell)!;
      return letter >= left1 && letter <= right && Number(row) >= Number(top) && Number(row) <= Number(bottom);
    }).map(({ at: cell }) => ({ at: cell, value: null }))));
  };

  test('serves both steps', () => {
    expect(states(entries, asRead(both)).slice(0, 5)).toEqual(['received done', 'inspected done', 'as_found done', 'adjusted done', 'as_left done']);
  });

  test('is done as found while it is not run as left', () => {
    expect(states(entries, emptied('left')).slice(2, 5)).toEqual(['as_found done', 'adjusted done', 'as_left open']);
    expect(missing('as_left', entries, emptied('left'))[0]).toMatch(/^Cell A!\w+ As left: no readings yet, the first belongs in \w+$/);
  });

  test('misses only what is of the step', () => {
    expect(states(entries, emptied('found')).slice(2, 5)).toEqual(['as_found open', 'adjusted done', 'as_left done']);
  });
});

test('an outcome that is open keeps an inspection open', () => {
  const made = withInventedReadings(plan('receiving-inspection', 'Cell A inspection'));
  const outcome = cellOf(made, 'verdict_overall');
  const read = (text: string): ReadSheet => ({ ...asRead(made), cells: asRead(made).cells.map((cell) => (cell.at === outcome ? { ...cell, value: text } : cell)) });
  const entries = [at('inspected', 'Cell A inspection')];
  expect(states(entries, read('outside in 1 of 9 judged'))[1]).toBe('inspected done');
  expect(missing('inspected', entries, read('open: readings are missing'))).toEqual([`Cell A inspection!${outcome} ${outcome} says “open: readings are missing”`]);
});

test('entries go to the step’s cell of the item, and no words empty it', () => {
  const own = job();
  const second = own.items[1];
  expect(stepEntry(second, 'adjusted', ' span trimmed ')).toEqual({ at: of('adjusted').replace('C', 'D'), value: 'span trimmed' });
  expect(stepEntry(second, 'adjusted', ' ')).toEqual({ at: of('adjusted').replace('C', 'D'), value: null });
  expect(skipEntry(second, 'as_left', 'scrapped')).toEqual({ at: of('as_left').replace('C', 'D'), value: 'skipped: scrapped' });
  const again = job([skipEntry(own.items[0], 'as_left', 'scrapped')]);
  expect(wayOf(again, firstItem(again), [])[4]).toMatchObject({ state: 'skipped', words: 'scrapped' });
  expect(runOf(again, firstItem(again), 'as_left', [left])).toBeUndefined();
});
