/** The review gives no finding on sound sheets: of every template and variants of them, filled, empty, half filled, with a title of their own. */
import { readWorkbook } from '../../src/hosts/file/readWorkbook';
import { writeWorkbook } from '../../src/hosts/file/writeWorkbook';
import { rebuilt } from '../../src/review/rebuilt';
import { review } from '../../src/review/review';
import { ReviewedSheet } from '../../src/review/reviewedSheet';
import { planComparison } from '../../src/worksheets/comparison/comparison';
import { lastResults } from '../../src/worksheets/comparison/lastResults';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { firstWorkbook } from '../../src/worksheets/firstWorkbook';
import { jobOf } from '../../src/worksheets/job/readJob';
import { builtInTemplates } from '../../src/worksheets/library';
import type { SheetPlan } from '../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import type { ReadSheet } from '../../src/worksheets/readSheet';
import { readySheets } from '../../src/worksheets/readySheets';
import { areaOf, addressesOf } from '../../src/worksheets/area';
import { cellOf, changed, LiveWorkbook, typed } from '../review/workbooks';
import { certifiedJob } from '../worksheets/certificate/certifiedJobs';

jest.setTimeout(300_000);

function findingsOf(sheets: readonly ReadSheet[]): string[] {
  return review(sheets).findings.map(({ sheet, at, kind, message }) => `${kind} ${sheet}!${at}: ${message}`);
}

function templated(id: string, answers: Answers = {}): SheetPlan {
  const template = builtInTemplates().find((one) => one.id === id)!;
  const { plan, problems } = planSheet(template, { ...suggestedAnswers(template), ...answers });
  if (!plan) throw new Error(problems.map(({ message }) => message).join());
  return withInventedReadings(plan);
}

describe('sound workbooks give no finding, read from the grid and from a file, and their plans are found again', () => {
  const variants: readonly (readonly [string, SheetPlan])[] = [
    ['ten points, corrected to the reference temperature', templated('ten-point-force', { corrected: 'yes' })],
    ['ten points, net of the mean of both zeros, degree 4', templated('ten-point-force', { zero: 'average', degree: '4' })],
    ['torque, zero between, three directions’ worth of runs', templated('ten-point-torque', { zero: 'interpolated', directions: 'clockwise, counter-clockwise', runs: '2', positions: '' })],
    ['own points by dead weights, with a data sheet', templated('custom-points', { applied: 'weights', teds: 'yes' })],
    ['five points in pounds, without rated output', templated('five-point', { unit: 'lbf', capacity: '5000', rated_output: '', points: '0, 25, 50, 75, 100, 50, 0' })],
    ['ISO 376 with increasing forces only', templated('iso-376', { use: 'increasing only', direction: 'tension', degree: '2', equation: 'quadratic' })],
    ['a system in both directions, three runs', templated('system', { directions: 'tension, compression', runs: '3' })],
  ];
  const all: readonly (readonly [string, SheetPlan])[] = [
    ...readySheets().map(({ id, filled }) => [id, filled] as const), ...readySheets().map(({ id, empty }) => [`${id}, empty`, empty] as const), ...variants,
  ];
  test.each(all)('%s', async (_, plan) => {
    const live = await LiveWorkbook.of([plan]);
    const sheets = await live.read();
    expect(findingsOf(sheets)).toEqual([]);
    expect(rebuilt(new ReviewedSheet(sheets[0]), undefined, sheets)).toBeDefined();
    const file = readWorkbook(await writeWorkbook([{ plan, values: live.values(plan.name) }])) as ReadSheet[];
    expect(findingsOf(file)).toEqual([]);
  });
});

const filled = readySheets().map((one) => [one.id, one.filled] as const);

test.each(filled)('%s, half of its readings typed', async (_, plan) => {
  const ranges = (plan.names ?? []).filter(({ name }) => /^(readings|typed)_/.test(name)).map(({ range }) => addressesOf(areaOf(range)!).flat());
  const open = new Set(ranges.flatMap((cells) => cells.slice(Math.floor(cells.length / 2))));
  const half = { ...plan, cells: plan.cells.map((cell) => (open.has(cell.at) && cell.formula === undefined ? { ...cell, value: undefined } : cell)) };
  expect(findingsOf(await (await LiveWorkbook.of([half])).read())).toEqual([]);
});

test.each(filled)('%s, as a laboratory’s own procedure of another title', async (_, plan) => {
  const sheets = await (await LiveWorkbook.of([plan])).read();
  expect(findingsOf(changed(sheets, plan.name, 'A1', typed('Own procedure')))).toEqual([]);
});

test('the workbook that the page starts with', async () => {
  expect(findingsOf(await (await LiveWorkbook.of(firstWorkbook())).read())).toEqual([]);
});

test('another degree, a point left out on purpose, a guarded decision, a narrower limit, another rated output', async () => {
  const [ten, five] = ['ten-point-force', 'five-point'].map((id) => readySheets().find((one) => one.id === id)!.filled);
  const at = (plan: SheetPlan, name: string, row = 0, column = 0) => cellOf([plan], plan.name, name, row, column);
  const live = await LiveWorkbook.of([ten]);
  for (const degree of [1, 2, 3]) expect(findingsOf(await live.withEdits([[ten.name, at(ten, 'degree'), degree]]))).toEqual([]);
  const needed = ten.cells.find((cell) => cell.at === at(ten, 'needed_compression'))!.value as number;
  expect(findingsOf(await live.withEdits([[ten.name, at(ten, 'readings_compression', 4, 1), null], [ten.name, at(ten, 'needed_compression'), needed - 1]]))).toEqual([]);
  const other = await LiveWorkbook.of([five]);
  expect(findingsOf(await other.withEdits([
    [five.name, at(five, 'decision_rule_tension'), 'guarded'], [five.name, at(five, 'limit_nonlinearity'), 0.00005], [five.name, at(five, 'rated_output'), 2.004],
  ]))).toEqual([]);
});

test('a comparison with the results of last time', async () => {
  const { plans, sheets } = await certifiedJob({ template: 'five-point', adjusted: true });
  const job = jobOf(sheets)!;
  const [found, left] = ['Cell A as found', 'Cell A as left'].map((name) => sheets.find((one) => one.name === name)!);
  const { plan } = planComparison({ job, item: job.items[0], found, left, last: lastResults(sheets), name: 'With last time' });
  expect(findingsOf(await (await LiveWorkbook.of([...plans, plan!])).read())).toEqual([]);
});
