/** @jest-environment jsdom */
import { builtInTemplates } from '../../../src/worksheets/library';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { planSheet } from '../../../src/worksheets/planner';
import type { ReadSheet } from '../../../src/worksheets/readSheet';
import { readJob } from '../../../src/worksheets/job/readJob';
import { wayOf } from '../../../src/worksheets/job/way';
import { giveDialogs, passed } from '../fakes';
import { contentOf, PlanHost } from './jobHost';
import { mountInventedJob } from './mountJob';

Element.prototype.scrollIntoView = jest.fn();
giveDialogs();

const PLAN = (name: string): SheetPlan => ({ name, columns: [8], cells: [{ at: 'A1', role: 'title', value: name }] });

describe('a step with a sheet', () => {
  test('opens the form of the inspection with what the job says, for the item and the step', async () => {
    const { press, built } = await mountInventedJob();
    await press('Build the receiving inspection');
    expect(built).toHaveLength(1);
    expect(built[0].template.kind).toBe('inspection');
    expect(built[0].answers).toMatchObject({ capacity: '20', unit: 'kN', sheet: 'Cell A inspection' });
    expect(built[0].step!.title).toBe('Cell A: inspected');
  });

  test('opens the form of the procedure that the job names, and its plan refers to the Job sheet', async () => {
    const { put, press, built, host } = await mountInventedJob();
    await put(0, { inspected: 'sound' });
    await press('Build the as-found run');
    const [{ template, answers, step }] = built;
    expect(template.title).toBe(readJob(host.content.get('Job')!)!.fields.procedure.value);
    expect(answers.sheet).toBe('Cell A as found');
    const plan = step!.link(planSheet(template, answers).plan!);
    expect(plan.cells.filter(({ formula }) => formula?.includes("'Job'!")).length).toBeGreaterThan(5);
  });

  test('is named on the Job sheet once its sheet is built, and then lists what that misses', async () => {
    const { put, press, built, host, item, again, state, step, gone } = await mountInventedJob();
    await put(0, { inspected: 'sound' });
    await press('Build the as-found run');
    const [{ template, answers, step: wanted }] = built;
    const plan = wanted!.link(planSheet(template, answers).plan!);
    await host.write(plan);
    await wanted!.written(plan);
    await again();
    expect(host.valueAt('Job', item(0).way.as_found.at)).toBe('Cell A as found');
    expect(state('As found')).toMatch(/^Begun in “Cell A as found”: \d+ missing$/);
    await press('Fill in “Cell A as found”', step('As found'));
    expect(gone[0]).toMatch(/^Cell A as found!/);
  });

  test('names the way back to the job', async () => {
    const { press, built, opened } = await mountInventedJob();
    await press('Build the receiving inspection');
    built[0].step!.back();
    expect(opened).toEqual(['job']);
  });

  test('takes a sheet that stands already', async () => {
    const host = new PlanHost();
    const inspection = builtInTemplates().find(({ kind }) => kind === 'inspection')!;
    const mounted = await mountInventedJob({ host });
    const { plan } = planSheet(inspection, { ...mounted.tab.functions.answersForItem(readJob(host.content.get('Job')!)!, mounted.item(0), inspection), sheet: 'Look' });
    host.content.set('Look', contentOf(plan!));
    await mounted.again();
    const row = mounted.step('Inspected');
    expect([...mounted.field('A sheet that stands already', row).querySelectorAll('option')].map(({ textContent }) => textContent)).toEqual(['Look']);
    await mounted.press('Use this sheet', row);
    expect(host.valueAt('Job', mounted.item(0).way.inspected.at)).toBe('Look');
  });

  test('says so if no template has the name that the job asks for, and goes to where it is chosen', async () => {
    const { host, put, step, press, gone } = await mountInventedJob();
    const { at } = readJob(host.content.get('Job')!)!.fields.procedure;
    await host.fill('Job', [{ at, value: 'Our own way' }]);
    await put(0, { inspected: 'sound' });
    expect(step('As found').textContent).toContain('No template is called “Our own way”');
    await press(`Choose the procedure in ${at}`);
    expect(gone).toEqual([`Job!${at}`]);
  });
});

describe('adjusted', () => {
  test('“No adjustment made” is one press', async () => {
    const { put, press, host, item, state } = await mountInventedJob();
    await put(0, { inspected: 'sound', as_found: 'skipped: broken when received' });
    await press('No adjustment made');
    expect(host.valueAt('Job', item(0).way.adjusted.at)).toBe('no adjustment made');
    expect(state('Adjusted or repaired')).toBe('Done: no adjustment made');
  });

  test('or what was done, in words, by Enter too', async () => {
    const { put, step, type, field, host, item } = await mountInventedJob();
    await put(0, { inspected: 'sound', as_found: 'skipped: broken' });
    type('What was adjusted or repaired', 'connector replaced', step('Adjusted or repaired'));
    field('What was adjusted or repaired', step('Adjusted or repaired')).dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter' }));
    await passed(5);
    expect(host.valueAt('Job', item(0).way.adjusted.at)).toBe('connector replaced');
  });
});

/** A job whose first item was run and not adjusted; its run counts as complete, since nothing computes here. */
async function atDecision(changed: Parameters<typeof mountInventedJob>[0] = {}) {
  const host = new PlanHost();
  host.content.set('Run A', contentOf(PLAN('Run A')));
  const wayWithRun: typeof wayOf = (...of) => wayOf(...of).map((one) => (one.step === 'as_found' || one.step === 'as_left' ? { ...one, state: 'done', missing: [] } : one));
  const mounted = await mountInventedJob({ ...changed, host, changed: { wayOf: wayWithRun, ...changed.changed } });
  await mounted.put(0, { inspected: 'sound', as_found: 'Run A', adjusted: 'no adjustment made' });
  return mounted;
}

describe('decided', () => {
  test('first compares: the runs and the name of the sheet to be are handed on, and it is written', async () => {
    const planComparison = jest.fn(() => ({ problems: [], plan: PLAN('Cell A comparison') }));
    const { press, host, said, texts } = await atDecision({ changed: { planComparison } });
    expect(texts('.rp-way .rp-main')).toEqual(['Compare as found and as left']);
    await press('Compare as found and as left');
    const [[asked]] = planComparison.mock.calls as unknown as [[{ found: { name: string }; left?: unknown; name: string }]];
    expect([asked.found.name, asked.left, asked.name]).toEqual(['Run A', undefined, 'Cell A comparison']);
    expect(host.written.at(-1)!.name).toBe('Cell A comparison');
    expect(said()).toBe('“Cell A comparison” is built.');
  });

  test('says why no comparison can be made', async () => {
    const planComparison = () => ({ problems: [{ severity: 'refuse' as const, question: 'found', message: 'Found no forces on “Run A”.' }] });
    const { press, said } = await atDecision({ changed: { planComparison } });
    await press('Compare as found and as left');
    expect(said()).toBe('It could not be done: Found no forces on “Run A”.');
  });

  test('shows the decision that the run proposes, to be confirmed', async () => {
    const { press, step, host, item, state } = await atDecision({ changed: { proposedDecision: () => 'within specification in all 6 judged' } });
    expect(step('Decided').textContent).toContain('The final run proposes this');
    await press('Confirm: within specification in all 6 judged');
    expect(host.valueAt('Job', item(0).way.decided.at)).toBe('within specification in all 6 judged');
    expect(state('Decided')).toBe('Done: within specification in all 6 judged');
  });

  test('asks the proposal of the run together with the comparison of the item', async () => {
    const proposedDecision = jest.fn((run: ReadSheet, comparison?: ReadSheet) => `${run.name} by ${comparison?.name ?? 'nothing'}`);
    const { host, press, again, item } = await atDecision({ changed: { proposedDecision } });
    host.content.set('Compared', contentOf({ ...PLAN('Compared'), cells: [{ at: 'A1', role: 'title', value: 'Cell A' }], names: [{ name: 'comparison_item', range: 'A1' }] }));
    await again();
    await press('Confirm: Run A by Compared');
    expect(host.valueAt('Job', item(0).way.decided.at)).toBe('Run A by Compared');
  });

  test('or other words', async () => {
    const { press, step, type, host, item } = await atDecision({ changed: { proposedDecision: () => 'outside' } });
    type('Decision in other words', 'limited to 10 kN', step('Decided'));
    await press('Decide in these words', step('Decided'));
    expect(host.valueAt('Job', item(0).way.decided.at)).toBe('limited to 10 kN');
  });

  test('takes last time from a workbook file, for the comparison that is built then; it outlasts a reload', async () => {
    const last = [{ where: 'Run', block: 'tension', output: 2 }];
    const planComparison = jest.fn(() => ({ problems: [], plan: PLAN('Cell A comparison') }));
    const { step, press, said, again } = await atDecision({ changed: { planComparison, lastResults: () => last } });
    const file = step('Decided').querySelector<HTMLInputElement>('input[type=file]')!;
    Object.defineProperty(file, 'files', { value: [fileOf('last year.xlsx')] });
    file.dispatchEvent(new Event('change'));
    await passed(5);
    expect(said()).toBe('Last time’s results are taken from “last year.xlsx”; the comparison will hold them.');
    await again();
    await press('Compare as found and as left');
    expect(planComparison).toHaveBeenCalledWith(expect.objectContaining({ last }));
  });

  test('a file without results of a run is told of', async () => {
    const { step, said } = await atDecision({ changed: { lastResults: () => [] } });
    const file = step('Decided').querySelector<HTMLInputElement>('input[type=file]')!;
    Object.defineProperty(file, 'files', { value: [fileOf('prices.xlsx')] });
    file.dispatchEvent(new Event('change'));
    await passed(5);
    expect(said()).toBe('It could not be done: No sheet of “prices.xlsx” holds the results of a run.');
  });
});

/** jsdom's files have no arrayBuffer. */
function fileOf(name: string): File {
  return Object.assign(new File(['x'], name), { arrayBuffer: async () => new ArrayBuffer(2) });
}

describe('certificate', () => {
  const MISSING = [{ sheet: 'Job', at: 'C6', message: 'C6, address of the laboratory, is empty; expected its address' }];

  test('lists what is missing instead of a form, and goes there', async () => {
    const { put, step, texts, gone } = await atDecision({ changed: { missingForCertificate: () => MISSING } });
    await put(0, { decided: 'within' });
    expect(step('Certificate').textContent).toContain('One thing is missing before the certificate can be made:');
    expect(texts('.rp-way .rp-main')).toEqual(['Fill in from Job C6']);
    step('Certificate').querySelector<HTMLElement>('.rp-finding')!.click();
    expect(gone).toEqual(['Job!C6']);
  });

  test('is built with a number made of that of the job, and named on the Job sheet', async () => {
    const planCertificate = jest.fn(({ name }: { name: string }) => ({ missing: [], plan: PLAN(name) }));
    const { put, press, step, field, host, item } = await atDecision({ changed: { missingForCertificate: () => [], planCertificate: planCertificate as never } });
    await put(0, { decided: 'within' });
    expect(field('Number of the certificate', step('Certificate')).value).toBe('DEMO-2026-041-1');
    field('Date of issue', step('Certificate')).value = '2026-11-30';
    await press('Build the certificate');
    expect(planCertificate).toHaveBeenCalledWith(expect.objectContaining({ number: 'DEMO-2026-041-1', name: 'Cell A certificate', issued: 46_356 }));
    expect(host.valueAt('Job', item(0).way.certificate.at)).toBe('Cell A certificate');
  });

  test('without a final run says that there is none', async () => {
    const { step } = await mountInventedJob();
    expect(step('Certificate').textContent).toContain('It is made of the final run, and there is none yet.');
  });
});

test('reviewed opens the Review tab', async () => {
  const { put, press, opened } = await mountInventedJob();
  await put(0, { inspected: 'sound', as_found: 'skipped: x', adjusted: 'repaired', as_left: 'skipped: x', decided: 'scrapped', certificate: 'skipped: scrapped' });
  await press('Open the review');
  expect(opened).toEqual(['review']);
});
