/** A job and the sheets linked to it, computed together by the engine of the page. */
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { inventedJobSheet } from '../../src/worksheets/data/inventedJob';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { answersForItem } from '../../src/worksheets/job/answersForItem';
import { proposedDecision } from '../../src/worksheets/job/decision';
import { linkedToJob } from '../../src/worksheets/job/linkedToJob';
import { jobOf } from '../../src/worksheets/job/readJob';
import { wayOf } from '../../src/worksheets/job/way';
import { builtInTemplates } from '../../src/worksheets/library';
import type { Entry, SheetPlan } from '../../src/worksheets/plan';
import { planSheet } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import type { ReadSheet } from '../../src/worksheets/readSheet';
import { asRead, cellOf, firstItem, job, typed } from '../worksheets/job/jobSheets';
import { CellError, Engine } from './bundle';

/** Sheets of the first item of the invented job, with what the template needs answered besides. */
const OTHERWISE: Readonly<Record<string, Answers>> = { system: { output_unit: 'kN' }, 'ten-point-torque': { unit: 'N·m', standard_capacity: '', directions: 'clockwise' } };
const each = builtInTemplates().map(({ id }) => id);

function linked(id: string, own = job()): SheetPlan {
  const template = builtInTemplates().find((candidate) => candidate.id === id)!;
  const { plan, problems } = planSheet(template, { ...answersForItem(own, firstItem(own), template, 'as_found'), ...OTHERWISE[id] });
  if (!plan) throw new Error(JSON.stringify(problems));
  return linkedToJob(plan, own, firstItem(own));
}

async function computed(plans: readonly SheetPlan[]): Promise<ReadSheet[]> {
  const engine = new Engine(engineSheets(plans));
  try {
    await engine.calculate();
    return plans.map((plan) => ({
      ...asRead(plan),
      cells: plan.cells.map(({ at, formula }) => {
        const value = engine.value(plan.name, at);
        return { at, value: value instanceof CellError ? { error: `${value.error} ${value.message}` } : value, ...(formula === undefined ? {} : { formula }) };
      }),
    }));
  } finally {
    engine.dispose();
  }
}

function errors({ name, cells }: ReadSheet): string[] {
  return cells.flatMap(({ at, value }) => (typeof value === 'object' && value !== null ? [`${name}!${at} ${value.error}`] : []));
}

const held = (sheet: ReadSheet, plan: SheetPlan, name: string) => sheet.cells.find(({ at }) => at === cellOf(plan, name))?.value;

test.each(each.flatMap((id) => [[id, 'empty'], [id, 'with readings']]))('%s, linked, %s: no error in any cell', async (id, state) => {
  const plan = state === 'empty' ? linked(id) : withInventedReadings(linked(id));
  const sheets = await computed([inventedJobSheet(), plan]);
  expect(sheets.flatMap(errors)).toEqual([]);
  expect(held(sheets[1], plan, 'customer')).toBe('Tidewater Crane Hire (invented)');
  expect(held(sheets[1], plan, 'identification')).toBe('Invented cell, DEMO-0017');
}, 30_000);

test('a job with nothing typed but its form leaves the run’s conditions blank, not 0', async () => {
  const blank: readonly Entry[] = ['job_customer', 'job_place', 'item_identification', 'item_condition', 'item_rated_output', 'standards_uncertainty', 'standards_due', 'standards_verified_to']
    .map((name) => ({ at: cellOf(inventedJobSheet(), name), value: null }));
  const own = job(blank);
  const plan = linked('ten-point-force', own);
  const sheets = await computed([typed(inventedJobSheet(), blank), plan]);
  const names = ['customer', 'place', 'identification', 'condition', 'rated_output', 'standard_uncertainty', 'standard_due', 'standard_capacity'];
  expect(names.map((name) => held(sheets[1], plan, name))).toEqual(names.map(() => ''));
  expect(sheets.flatMap(errors)).toEqual([]);
  expect(sheets[0].cells.filter(({ formula }) => formula).map(({ value }) => value)).toEqual(['Cell A', 'Cell B', '', '', '', '']);
}, 30_000);

test('a run follows the job: the uncertainty of the standard reaches its budget, and the way and the decision are told from what was computed', async () => {
  const run = withInventedReadings(linked('five-point'));
  const inWay = { at: cellOf(inventedJobSheet(), 'way_as_found'), value: run.name };
  const uncertainty = async (value: number) => {
    const sheets = await computed([typed(inventedJobSheet(), [inWay, { at: cellOf(inventedJobSheet(), 'standards_uncertainty'), value }]), run]);
    return { sheets, expanded: held(sheets[1], run, 'value_expanded') as number };
  };
  const [small, large] = [await uncertainty(0.0002), await uncertainty(0.02)];
  expect(large.expanded).toBeGreaterThan(small.expanded);
  // So great a component outweighs the rest: U with k = 2 is about its own.
  expect(large.expanded).toBeCloseTo(0.02, 3);
  const own = jobOf(small.sheets)!;
  expect(wayOf(own, firstItem(own), small.sheets).map(({ step, state }) => `${step} ${state}`).slice(0, 4)).toEqual(['received done', 'inspected open', 'as_found done', 'adjusted waiting']);
  expect(proposedDecision(small.sheets[1])).toMatch(/^(within specification in all|outside in) .* judged; with the uncertainty \(simple\): (pass|fail)/);
}, 30_000);
