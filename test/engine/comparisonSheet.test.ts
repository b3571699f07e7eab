/** The comparison of a job: as found, as left and last time, in a computed workbook, against hand-worked numbers and plain arithmetic. */
import { addressOf, rangeOf } from '../../src/hosts/address';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { planComparison } from '../../src/worksheets/comparison/comparison';
import { lastResults, type LastResults } from '../../src/worksheets/comparison/lastResults';
import { inventedJobSheet } from '../../src/worksheets/data/inventedJob';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { builtInTemplates } from '../../src/worksheets/library';
import { readJob } from '../../src/worksheets/job/readJob';
import { linkedToJob } from '../../src/worksheets/job/linkedToJob';
import type { SheetPlan } from '../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import type { ReadSheet, ReadValue } from '../../src/worksheets/readSheet';
import { CellError, Engine } from './bundle';

jest.setTimeout(120_000);

type Value = ReturnType<Engine['value']>;
type Fault = InstanceType<typeof CellError>;
type Cells = Readonly<Record<string, string | number | undefined>>;

const [FOUND, LEFT, NAME] = ['Cell A as found', 'Cell A as left', 'Cell A comparison'];

/** A plan with constants in some of its cells. */
function typed(plan: SheetPlan, cells: Cells): SheetPlan {
  return { ...plan, cells: plan.cells.map((cell) => (cell.at in cells ? { ...cell, formula: undefined, value: cells[cell.at] } : cell)) };
}

function cellsOf(plan: SheetPlan, name: string): string[] {
  const { startRow, endRow, startColumn, endColumn } = rangeOf(plan.names!.find((entry) => entry.name === name)!.range);
  return Array.from({ length: endRow - startRow + 1 }, (_, i) => i).flatMap((i) =>
    Array.from({ length: endColumn - startColumn + 1 }, (_unused, j) => addressOf({ row: startRow + i, column: startColumn + j })));
}

/** A column of a plan as constants: those of one run where the range has several columns. */
function column(plan: SheetPlan, name: string, values: readonly (number | undefined)[], run = 0, runs = 1): Cells {
  const cells = cellsOf(plan, name);
  return Object.fromEntries(values.map((value, i) => [cells[i * runs + run], value]));
}

function run(template: string, answers: Answers, sheet: string): SheetPlan {
  const found = builtInTemplates().find(({ id }) => id === template)!;
  const { plan, problems } = planSheet(found, { ...suggestedAnswers(found), ...answers, sheet });
  if (!plan) throw new Error(JSON.stringify(problems));
  return plan;
}

const POINTS = '0 50 100 50 0';
/** A run of one direction with readings, one column a run. */
function readRun(sheet: string, runs: readonly (readonly (number | undefined)[])[], answers: Answers = {}): SheetPlan {
  const plan = run('five-point', { capacity: '20', unit: 'kN', output_unit: 'mV/V', resolution: '0.00001', rated_output: '2', directions: 'compression', points: POINTS, applied: 'planned', zero: 'initial', runs: String(runs.length), positions: '', ...answers }, sheet);
  return runs.reduce((before, values, i) => typed(before, column(before, 'readings_compression', values, i, runs.length)), typed(plan, { [cellsOf(plan, 'date')[0]]: 46_351 }));
}

interface Computed {
  readonly plans: readonly SheetPlan[];
  readonly read: (name: string) => ReadSheet;
}

/** Workbooks of runs as a host reads them back, computed. */
async function computedRuns(plans: readonly SheetPlan[]): Promise<Computed> {
  const engine = new Engine(engineSheets(plans));
  await engine.calculate();
  const sheets = plans.map((plan): ReadSheet => ({
    name: plan.name, names: plan.names ?? [],
    cells: plan.cells.map(({ at, formula, format }) => ({ at, value: asRead(engine.value(plan.name, at)), ...(formula ? { formula } : {}), ...(format ? { format } : {}) })),
  }));
  engine.dispose();
  return { plans, read: (name) => sheets.find((sheet) => sheet.name === name)! };
}

function asRead(value: Value): ReadValue {
  return value instanceof CellError ? { error: (value as Fault).error } : (value as Exclude<Value, Fault>);
}

interface Asked {
  readonly found: SheetPlan;
  readonly left?: SheetPlan;
  readonly last?: readonly LastResults[];
  /** Entries on the job's sheet by name, in the first of its cells. */
  readonly job?: Readonly<Record<string, string | number | undefined>>;
  /** Entries on the comparison by name. */
  readonly entries?: Readonly<Record<string, readonly (number | undefined)[]>>;
}

/** The comparison in its workbook, computed. */
async function compared({ found, left, last, job: fields = {}, entries = {} }: Asked) {
  const blank = inventedJobSheet();
  const jobPlan = typed(blank, Object.fromEntries(Object.entries(fields).map(([name, value]) => [cellsOf(blank, name)[0], value])));
  const runs = await computedRuns([jobPlan, found, ...(left ? [left] : [])]);
  const job = readJob(runs.read(jobPlan.name))!;
  const { plan, problems } = planComparison({ job, item: job.items[0], found: runs.read(found.name), ...(left ? { left: runs.read(left.name) } : {}), ...(last ? { last } : {}), name: NAME });
  if (!plan) throw new Error(JSON.stringify(problems));
  const filled = Object.entries(entries).reduce((before, [name, values]) => typed(before, column(before, name, values)), plan);
  const engine = new Engine(engineSheets([...runs.plans, filled]));
  await engine.calculate();
  const values = new Map(filled.cells.map(({ at }) => [at, engine.value(NAME, at)]));
  engine.dispose();
  const all = (name: string) => cellsOf(filled, name).map((at) => values.get(at) ?? null);
  return {
    plan: filled, problems, all, value: (name: string) => all(name)[0],
    errors: [...values].filter(([, value]) => value instanceof CellError).map(([at, value]) => [at, filled.cells.find((cell) => cell.at === at)?.formula, String((value as Fault).message)]),
    plain: plan.names!.filter(({ name }) => name.startsWith('plain_')).map(({ name, range }) => {
      const { startRow, startColumn } = rangeOf(range);
      return [name, values.get(addressOf({ row: startRow, column: startColumn + 2 }))] as const;
    }),
  };
}

function near(found: readonly Value[], expected: readonly (number | '')[], digits = 12): void {
  expect(found).toHaveLength(expected.length);
  found.forEach((value, i) => (expected[i] === '' ? expect(value).toBe('') : expect([typeof value, Number(value)]).toEqual(['number', expect.closeTo(Number(expected[i]), digits)])));
}

// Zero 0.01; net 1.003 and 2.004 up, 1.005 down, zero return 0.001; then trimmed: 1.0005, 2.0002, 1.0009, 0.0002. Compression, so all is negative.
const AS_FOUND = [0.01, -0.993, -1.994, -0.995, 0.009];
const AS_LEFT = [0.002, -0.9985, -1.9982, -0.9989, 0.0018];

describe('as found and as left', () => {
  test('gives outputs, shift and deviation from rated output as worked by hand', async () => {
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND]), left: readRun(LEFT, [AS_LEFT]) });
    expect(sheet.errors).toEqual([]);
    near(sheet.all('force_compression'), [0, -10, -20, -10, 0]);
    near(sheet.all('found_compression'), [0, -1.003, -2.004, -1.005, -0.001]);
    near(sheet.all('left_compression'), [0, -1.0005, -2.0002, -1.0009, -0.0002]);
    // Less output than before counts as negative, whichever way the output goes.
    near(sheet.all('shift_compression'), [0, -0.00125, -0.0019, -0.00205, -0.0004]);
    near(sheet.all('relative_shift_compression'), ['', 1.0005 / 1.003 - 1, 2.0002 / 2.004 - 1, 1.0009 / 1.005 - 1, '']);
    near(sheet.all('deviation_found_compression'), [0, 0.0015, 0.002, 0.0025, 0.0005]);
    near(sheet.all('deviation_left_compression'), [0, 0.00025, 0.0001, 0.00045, 0.0001]);
    expect(sheet.all('before_compression')).toEqual(['within', 'outside', 'outside', 'outside', 'within']);
    expect(sheet.all('after_compression')).toEqual(['within', 'within', 'within', 'within', 'within']);
    near([sheet.value('worst_before'), sheet.value('worst_after'), sheet.value('worst_shift')], [0.0025, 0.00045, -0.00205]);
    expect([sheet.value('verdict_worst_before'), sheet.value('verdict_worst_after')]).toEqual(['outside', 'within']);
    expect([sheet.value('outcome_before'), sheet.value('outcome_after')]).toEqual(['outside in 3 of 5 judged', 'within specification in all 5 judged']);
    expect([sheet.value('comparison_item'), sheet.value('comparison_found'), sheet.value('comparison_left')]).toEqual(['Cell A', FOUND, LEFT]);
    expect(sheet.plain.filter(([name]) => name.includes('worst')).map(([, verdict]) => verdict)).toEqual(['agrees', 'agrees', 'agrees']);
  });

  test('takes the mean of the runs', async () => {
    const shifted = AS_FOUND.map((value, i) => (i === 0 ? value : value - 0.0004));
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND, shifted]), left: readRun(LEFT, [AS_LEFT]) });
    near(sheet.all('found_compression'), [0, -1.0032, -2.0042, -1.0052, -0.0012]);
    expect(sheet.errors).toEqual([]);
  });

  test('without an adjustment the run as found is final, and nothing shifts', async () => {
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND]) });
    expect(sheet.errors).toEqual([]);
    expect(sheet.value('comparison_left')).toBe('no adjustment made');
    expect(sheet.all('left_compression')).toEqual(sheet.all('found_compression'));
    expect(sheet.all('after_compression')).toEqual(sheet.all('before_compression'));
    near([sheet.value('worst_shift')], [0]);
    expect(sheet.value('outcome_after')).toBe('outside in 3 of 5 judged');
  });

  test('without a rated output the deviation is from the line through the ends of each run', async () => {
    const answers = { rated_output: '' };
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND], answers), left: readRun(LEFT, [AS_LEFT], answers), job: { item_rated_output: undefined } });
    expect(sheet.errors).toEqual([]);
    near(sheet.all('deviation_found_compression'), [0, 1.003 / 2.004 - 0.5, 0, 1.005 / 2.004 - 0.5, 0.001 / 2.004]);
    near(sheet.all('deviation_left_compression'), [0, 1.0005 / 2.0002 - 0.5, 0, 1.0009 / 2.0002 - 0.5, 0.0002 / 2.0002]);
    near(sheet.all('shift_compression').slice(2, 3), [(2.0002 - 2.004) / 2.004]);
    expect(sheet.plain.filter(([name]) => name.includes('worst')).map(([, verdict]) => verdict)).toEqual(['agrees', 'agrees', 'agrees']);
  });

  describe('by the decision rule of the job', () => {
    const withU = (plan: SheetPlan, expanded: number | undefined) => typed(plan, { [cellsOf(plan, 'value_expanded_output')[0]]: expanded });
    const runs = (found: number | undefined, left: number | undefined) => ({ found: withU(readRun(FOUND, [AS_FOUND]), found), left: withU(readRun(LEFT, [AS_LEFT]), left) });

    // Of RO = 2 mV/V: U = 0.0003 as found and 0.0006 as left, so that 0.0007 and 0.0004 are left of the tolerance of 0.001.
    test('guarded: U of its own run is taken off the tolerance, as worked by hand', async () => {
      const sheet = await compared({ ...runs(0.0006, 0.0012), job: { job_decision_rule: 'guarded' } });
      expect(sheet.errors).toEqual([]);
      expect(sheet.value('comparison_rule')).toBe('guarded');
      near(['expanded_before', 'expanded_after', 'accepted_before', 'accepted_after'].map((name) => sheet.value(`${name}_compression`)), [0.0003, 0.0006, 0.0007, 0.0004]);
      near(sheet.all('allowed_compression'), [0.001, 0.001, 0.001, 0.001, 0.001]);
      expect(sheet.all('before_compression')).toEqual(['within', 'outside', 'outside', 'outside', 'within']);
      expect(sheet.all('after_compression')).toEqual(['within', 'within', 'within', 'outside', 'within']);
      expect([sheet.value('outcome_after'), sheet.value('verdict_worst_before'), sheet.value('verdict_worst_after')]).toEqual(['outside in 1 of 5 judged', 'outside', 'outside']);
    });

    test('guarded: a deviation at the limit that the guard band leaves is within, a U beyond the tolerance leaves none', async () => {
      const at = await compared({ ...runs(0.0022, 0.0011), job: { job_decision_rule: 'guarded' } });
      near([at.value('accepted_before_compression'), at.value('accepted_after_compression')], [-0.0001, 0.00045]);
      expect(new Set(at.all('before_compression'))).toEqual(new Set(['outside']));
      expect([at.value('outcome_after'), at.value('verdict_worst_after')]).toEqual(['within specification in all 5 judged', 'within']);
    });

    test('simple: U is shown and not taken off', async () => {
      const sheet = await compared({ ...runs(0.0006, 0.0012), job: { job_decision_rule: 'simple' } });
      near(['expanded_after', 'accepted_after'].map((name) => sheet.value(`${name}_compression`)), [0.0006, 0.001]);
      expect([sheet.value('outcome_after'), sheet.value('verdict_worst_after')]).toEqual(['within specification in all 5 judged', 'within']);
    });

    test('guarded, and U not computed: no result, and the outcome says why', async () => {
      const sheet = await compared({ ...runs(0.0006, undefined), job: { job_decision_rule: 'guarded' } });
      expect(sheet.errors).toEqual([]);
      expect([sheet.value('expanded_after_compression'), sheet.value('accepted_after_compression'), sheet.value('verdict_worst_after')]).toEqual(['', 'no U', 'no result']);
      expect(new Set(sheet.all('after_compression'))).toEqual(new Set(['no result']));
      expect(sheet.value('outcome_after')).toBe('not judged: the rule is guarded, and U of the run is not computed');
      expect(sheet.value('outcome_before')).toBe('outside in 3 of 5 judged');
      const simple = await compared({ ...runs(undefined, undefined), job: { job_decision_rule: 'simple' } });
      expect([simple.errors, simple.value('outcome_after')]).toEqual([[], 'within specification in all 5 judged']);
    });

    test('guarded, and readings still to come: open, not unjudged', async () => {
      const sheet = await compared({ found: readRun(FOUND, [AS_FOUND]), left: readRun(LEFT, [AS_LEFT.map(() => undefined)]), job: { job_decision_rule: 'guarded' } });
      expect([sheet.errors, sheet.value('outcome_after'), sheet.value('verdict_worst_after')]).toEqual([[], 'open: readings are missing', '']);
    });

    test('without an adjustment U as found counts for both', async () => {
      const sheet = await compared({ found: withU(readRun(FOUND, [AS_FOUND]), 0.0006), job: { job_decision_rule: 'guarded' } });
      near([sheet.value('expanded_after_compression')], [0.0003]);
    });
  });

  test('without a tolerance nothing is judged, and planning says so', async () => {
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND]), left: readRun(LEFT, [AS_LEFT]), job: { job_tolerance: undefined } });
    expect(sheet.problems.map(({ severity, question }) => [severity, question])).toEqual([['warn', 'job']]);
    expect(new Set(sheet.all('before_compression'))).toEqual(new Set(['no limit']));
    expect(sheet.value('outcome_before')).toBe('nothing was judged: no limits');
  });

  test('points in another order meet their like: the same load, going up with going up', async () => {
    // The run as left goes up in two steps only and holds the half load on the way down first in another place.
    const found = readRun(FOUND, [[0.01, -0.493, -0.993, -1.994, -0.995, -0.494, 0.009]], { points: '0 25 50 100 50 25 0' });
    const left = readRun(LEFT, [[0.002, -0.9985, -0.4987, -1.9982, -0.4992, -0.9989, 0.0018]], { points: '0 50 25 100 25 50 0' });
    const sheet = await compared({ found, left });
    expect(sheet.problems).toEqual([]);
    near(sheet.all('left_compression'), [0, -0.5007, -1.0005, -2.0002, -1.0009, -0.5012, -0.0002]);
    expect(sheet.errors).toEqual([]);
  });

  test('typed forces that do not quite meet: the output as left is brought to the force as found', async () => {
    const found = readRun(FOUND, [AS_FOUND], { applied: 'typed' });
    const left = readRun(LEFT, [AS_LEFT], { applied: 'typed' });
    const forces = column(left, 'forces_compression', [0, -10.02, -19.99, -10, 0]);
    const sheet = await compared({ found, left: typed(left, forces) });
    near(sheet.all('left_compression'), [0, (-1.0005 * 10) / 10.02, (-2.0002 * 20) / 19.99, -1.0009, -0.0002]);
    expect(sheet.errors).toEqual([]);
  });

  test('readings still to come leave everything open, without an error', async () => {
    const none = AS_LEFT.map(() => undefined);
    for (const [found, left] of [[none, none], [AS_FOUND, none], [AS_FOUND, [0.002, -0.9985, undefined, -0.9989, undefined]]] as const) {
      const sheet = await compared({ found: readRun(FOUND, [found]), left: readRun(LEFT, [left]) });
      expect(sheet.errors).toEqual([]);
      expect([sheet.value('worst_after'), sheet.value('worst_shift')]).toEqual(['', '']);
      expect(sheet.value('outcome_after')).toBe('open: readings are missing');
      expect(sheet.plain.filter(([, verdict]) => verdict === 'differs')).toEqual([]);
    }
  });
});

describe('a system sheet', () => {
  const answers = { capacity: '20', unit: 'kN', output_unit: 'kN', resolution: '0.001', points: POINTS, runs: '1', directions: 'tension' };
  const read = (left: readonly (number | undefined)[]) => {
    const plan = run('system', answers, FOUND);
    return typed(plan, { ...column(plan, 'readings_as_found', [0, 10.03, 20.05, 10.04, 0.01]), ...column(plan, 'readings_as_left', left) });
  };

  test('holds both runs in itself; deviations are from what is applied', async () => {
    const sheet = await compared({ found: read([0, 10.004, 20.006, 10.002, 0]) });
    expect(sheet.errors).toEqual([]);
    expect(sheet.value('comparison_left')).toBe(FOUND);
    near(sheet.all('deviation_found_system'), [0, 0.0015, 0.0025, 0.002, 0.0005]);
    near(sheet.all('deviation_left_system'), [0, 0.0002, 0.0003, 0.0001, 0]);
    near([sheet.value('worst_shift')], [-0.0022]);
    expect(sheet.plain.filter(([name]) => name.includes('worst')).map(([, verdict]) => verdict)).toEqual(['agrees', 'agrees', 'agrees']);
  });

  test('nothing read as left: no adjustment was made', async () => {
    const sheet = await compared({ found: read([]) });
    expect(sheet.value('comparison_left')).toBe('no adjustment made');
    expect(sheet.all('left_system')).toEqual(sheet.all('found_system'));
  });

  test('without a tolerance of the job the points are judged by the tolerances of the sheet', async () => {
    const sheet = await compared({ found: read([0, 10.004, 20.006, 10.002, 0]), job: { job_tolerance: undefined } });
    // The greater of 0.1 % of the reading and 0.02 % of capacity, of 20 kN.
    near(sheet.all('allowed_system'), [0.0002, 0.0005, 0.001, 0.0005, 0.0002]);
    expect(sheet.all('before_system')).toEqual(['within', 'outside', 'outside', 'outside', 'outside']);
  });
});

const LAST: LastResults = { where: 'Cell A as left', identification: 'Invented cell, DEMO-0017', block: 'compression', date: 45_981, output: -2.0001, zero: 0.0015, capacity: 20, unit: 'kN', outputUnit: 'mV/V' };

describe('last time', () => {
  const job = {};

  test('change of zero and span, shift and stability from outputs at capacity as worked by hand', async () => {
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND]), left: readRun(LEFT, [AS_LEFT]), last: [LAST], job });
    expect(sheet.errors).toEqual([]);
    expect(sheet.problems).toEqual([]);
    expect(sheet.value('value_days_since')).toBe(370);
    // Zero from 0.0015 to 0.01, against the load, which goes down; span from 2.0001 to 2.004; of 2 mV/V.
    near([sheet.value('zero_change'), sheet.value('span_change')], [-0.00425, 0.00195]);
    near(sheet.all('last_shift_compression'), ['', 0.0039 / 2.0001, 0.0039 / 2.0001, 0.0039 / 2.0001, '']);
    near([sheet.value('stability')], [0.0039 / 2.0001]);
    expect(sheet.value('stability_verdict')).toBe('outside');
    expect(sheet.plain.map(([, verdict]) => verdict)).toEqual(Array(6).fill('agrees'));
  });

  test('polynomials are compared where both calibrations have one', async () => {
    const answers = { capacity: '20', unit: 'kN', output_unit: 'mV/V', resolution: '0.000005', rated_output: '2', degree: '2' };
    const filled = withInventedReadings(run('ten-point-force', answers, FOUND));
    const coefficients = [1e-5, -0.10002, 1.5e-6];
    const sheet = await compared({ found: filled, last: [{ ...LAST, output: undefined, coefficients }], job });
    expect(sheet.errors).toEqual([]);
    const now = (await computedRuns([inventedJobSheet(), filled])).read(FOUND);
    const a = lastResults([now])[0].coefficients!;
    const shifts = Array.from({ length: 10 }, (_unused, i) => {
      const force = 2 * (i + 1);
      const [then, is] = [coefficients, a].map((list) => list.reduce((sum, term, k) => sum + term * force ** k, 0));
      return is / then - 1;
    });
    near(sheet.all('last_shift_compression'), ['', ...shifts, ''], 12);
    const worst = shifts.reduce((most, shift) => (Math.abs(shift) > Math.abs(most) ? shift : most));
    near([sheet.value('stability')], [worst]);
    // The output at capacity of last time comes from its polynomial.
    const outputNow = lastResults([now])[0].output!;
    near([sheet.value('span_change')], [-(outputNow - (1e-5 - 0.10002 * 20 + 1.5e-6 * 400)) / 2]);
    expect(sheet.plain.filter(([, verdict]) => verdict !== 'agrees')).toEqual([]);
  });

  test('without last time everything of it stays open, and it can be typed', async () => {
    const open = await compared({ found: readRun(FOUND, [AS_FOUND]), left: readRun(LEFT, [AS_LEFT]) });
    expect(open.errors).toEqual([]);
    expect(['zero_change', 'span_change', 'stability', 'stability_verdict'].map(open.value)).toEqual(['', '', '', '']);
    expect(open.value('pattern')).toBe('no results of last time to compare with');
    // The date is known by the job: 2025-11-20.
    expect(open.value('last_date')).toBe(45_981);
    const filled = await compared({ found: readRun(FOUND, [AS_FOUND]), left: readRun(LEFT, [AS_LEFT]), entries: { last_zero: [0.0015], last_output: [-2.0001] } });
    expect(filled.errors).toEqual([]);
    near([filled.value('zero_change'), filled.value('span_change'), filled.value('stability')], [-0.00425, 0.00195, 0.0039 / 2.0001]);
    // Typed coefficients do as well: a line of the same output.
    const line = await compared({ found: readRun(FOUND, [AS_FOUND]), entries: { last_coefficients: [0, -2.0001 / 20] } });
    expect(line.errors).toEqual([]);
    near([line.value('span_change'), line.value('stability')], [0.00195, 0.0039 / 2.0001]);
  });

  test('an output at another capacity is brought to that of now', async () => {
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND]), last: [{ ...LAST, output: -2.0001 / 2, capacity: 10 }] });
    near([sheet.value('span_change'), sheet.value('stability')], [0.00195, 0.0039 / 2.0001]);
    expect(sheet.plain.filter(([, verdict]) => verdict !== 'agrees')).toEqual([]);
  });

  test.each([['AA', 0.00032], ['A', 0.0016]] as const)('class %s sets the limit of stability, %f', async (name, limit) => {
    const within = { ...LAST, output: -2.004 / (1 + limit * 0.99) };
    const beyond = { ...LAST, output: -2.004 / (1 + limit * 1.01) };
    const verdicts = await Promise.all([within, beyond].map(async (last) => (await compared({ found: readRun(FOUND, [AS_FOUND]), last: [last], job: { job_class: name } })).value('stability_verdict')));
    expect(verdicts).toEqual(['within', 'outside']);
  });

  test('another class than AA and A has no limit of stability', async () => {
    const sheet = await compared({ found: readRun(FOUND, [AS_FOUND]), last: [LAST], job: { job_class: '0.5' } });
    expect(sheet.errors).toEqual([]);
    expect([typeof sheet.value('stability'), sheet.value('stability_verdict')]).toEqual(['number', 'no limit']);
  });
});

describe('what the pattern fits', () => {
  const now = (zero: number, gain: number, end = zero) => [zero, zero - 1 * gain, zero - 2 * gain, zero - 1 * gain, end];
  const last: LastResults = { ...LAST, output: -2, zero: 0.01 };
  test.each<[string, readonly number[], string]>([
    ['zero moved with the load, span kept', now(-0.01, 1), 'fits an overload (permanent set)'],
    ['zero moved against the load, span kept', now(0.03, 1), 'fits an overload the other way'],
    ['zero and span moved', now(-0.01, 1.002), 'fits damage by overload'],
    ['span alone', now(0.01, 1.002), 'span alone'],
    ['neither', now(0.0101, 1.0001), 'fits ordinary use'],
    ['a zero that drifts within the run', now(0.01, 1, 0.014), 'fits moisture'],
    ['the other sign', now(0.01, -1), 'the other sign'],
  ])('%s', async (_, readings, words) => {
    const sheet = await compared({ found: readRun(FOUND, [readings]), last: [last] });
    expect(sheet.errors).toEqual([]);
    expect(sheet.value('pattern')).toContain(words);
    expect(sheet.value('pattern')).toMatch(/a hint, not a verdict$/);
  });

  test('a zero of last time that nobody knows is said', async () => {
    const sheet = await compared({ found: readRun(FOUND, [now(0.01, 1.002)]), last: [{ ...last, zero: undefined }] });
    expect(sheet.errors).toEqual([]);
    expect(sheet.value('pattern')).toContain('zero of last time not known');
  });
});

test('each direction is judged by its own U, and the worst deviation by that of its point', async () => {
  const answers = { directions: 'tension, compression', points: POINTS, rated_output: '2', output_unit: 'mV/V', capacity: '20', unit: 'kN', resolution: '0.00001', runs: '1', positions: '' };
  const plan = run('five-point', answers, FOUND);
  const values = (top: number) => [0, top / 2, top, top / 2, 0];
  const found = typed(plan, {
    ...column(plan, 'readings_tension', values(2.001)), ...column(plan, 'readings_compression', values(-2.0012)),
    [cellsOf(plan, 'value_expanded_output_tension')[0]]: 0.0012, [cellsOf(plan, 'value_expanded_output_compression')[0]]: 0.0004,
  });
  const sheet = await compared({ found, job: { job_decision_rule: 'guarded' } });
  expect(sheet.errors).toEqual([]);
  // 0.0005 against 0.001 − 0.0006 in tension, 0.0006 against 0.001 − 0.0002 in compression.
  expect([sheet.all('before_tension')[2], sheet.all('before_compression')[2]]).toEqual(['outside', 'within']);
  near([sheet.value('worst_before')], [0.0006]);
  expect([sheet.value('verdict_worst_before'), sheet.value('outcome_before')]).toEqual(['within', 'outside in 1 of 10 judged']);
});

describe('both directions', () => {
  const answers = { directions: 'tension, compression', points: POINTS, rated_output: '2', output_unit: 'mV/V', capacity: '20', unit: 'kN', resolution: '0.00001' };
  const both = (sheet: string, tension: number, compression: number) => {
    const plan = run('five-point', { ...answers, runs: '1', positions: '' }, sheet);
    const values = (gain: number) => [0.01, 0.01 + gain, 0.01 + 2 * gain, 0.01 + gain, 0.01];
    return typed(plan, { ...column(plan, 'readings_tension', values(tension)), ...column(plan, 'readings_compression', values(-compression)) });
  };
  const last = (block: string, output: number): LastResults => ({ ...LAST, block, output, zero: 0.01 });

  test.each([
    ['alike', 1.002, 1.002, 'alike in every direction'],
    ['in one only', 1.002, 1, 'unlike in its directions'],
  ])('span alone, %s', async (_, tension, compression, words) => {
    const sheet = await compared({ found: both(FOUND, tension, compression), left: both(LEFT, 1, 1), last: [last('tension', 2), last('compression', -2)] });
    expect(sheet.errors).toEqual([]);
    expect(sheet.value('pattern_tension')).toContain(words);
    near([sheet.value('span_change_tension'), sheet.value('span_change_compression')], [tension - 1, compression - 1]);
    near([sheet.value('worst_before'), sheet.value('worst_after')], [0.002, 0]);
    expect(sheet.plain.filter(([, verdict]) => verdict !== 'agrees')).toEqual([]);
  });
});

test('a sheet of force-proving instruments is compared by its blocks, their series averaged', async () => {
  const job = readJob((await computedRuns([inventedJobSheet()])).read('Job'))!;
  const found = withInventedReadings(run('iso-376', { capacity: '20', unit: 'kN', output_unit: 'mV/V', rated_output: '2', points: '20 60 100', class_from: '20', degree: '1' }, FOUND));
  const read = (await computedRuns([inventedJobSheet(), linkedToJob(found, job, job.items[0])])).read(FOUND);
  const sheet = await compared({ found, left: { ...found, name: LEFT }, last: lastResults([read]) });
  expect(sheet.errors).toEqual([]);
  const outputs = sheet.all('found_rotated').map(Number);
  expect(Math.max(...outputs.map(Math.abs))).toBeCloseTo(2, 1);
  // W = 2·wc at the greatest force, of RO = 2 mV/V.
  const wc = read.cells.find(({ at }) => at === cellsOf(found, 'value_wc_greatest')[0])!.value as number;
  near([sheet.value('expanded_before_rotated')], [wc * Math.max(...outputs.map(Math.abs))]);
  near([sheet.value('worst_shift'), sheet.value('stability_rotated')], [0, 0]);
  expect(sheet.plain.filter(([, verdict]) => verdict !== 'agrees')).toEqual([]);
});

test('linked runs carry the tolerance and the rated output of the job into the comparison', async () => {
  const job = readJob((await computedRuns([inventedJobSheet()])).read('Job'))!;
  const sheet = await compared({ found: linkedToJob(readRun(FOUND, [AS_FOUND]), job, job.items[0]), job: { item_rated_output: 2.1, job_tolerance: 0.05 } });
  expect(sheet.errors).toEqual([]);
  near([sheet.value('rated_output'), sheet.value('tolerance'), sheet.value('worst_before')], [2.1, 0.05, 2.004 / 2.1 - 1], 12);
});
