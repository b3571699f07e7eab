/** The sheet of every template, computed by the engine of the page: empty, and with invented readings. */
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { addressOf, rangeOf } from '../../src/hosts/address';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { builtInTemplates } from '../../src/worksheets/library';
import type { SheetPlan } from '../../src/worksheets/plan';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import type { Answers } from '../../src/worksheets/question';
import { readySheets } from '../../src/worksheets/readySheets';
import { CellError, Engine } from './bundle';

type EngineValue = ReturnType<Engine['value']>;

const sheets = readySheets();

/** Sheets that the templates do not suggest, but that a technician may ask for. */
const VARIANTS: readonly (readonly [what: string, template: string, answers: Answers])[] = [
  ['degree 5', 'ten-point-force', { degree: '5' }],
  ['both directions, zeros interpolated', 'ten-point-force', { directions: 'tension, compression', zero: 'interpolated', degree: '3' }],
  ['counter-clockwise, mean zero, up and down', 'ten-point-torque', { directions: 'counter-clockwise', zero: 'average', points: '0 10 20 30 40 50 60 70 80 90 100 80 60 40 20 0' }],
  ['six runs, which lie across the page', 'custom-points', { runs: '6', zero: 'interpolated', directions: 'compression' }],
  ['one run without a last zero', 'five-point', { runs: '1', points: '0 25 50 75 100' }],
  ['a system in both directions, three runs', 'system', { directions: 'tension, compression', runs: '3', positions: '0°, 120°, 240°' }],
  ['a simulator with five runs', 'indicator-simulator', { runs: '5', scale: '123.4', zero: 'average' }],
  ['forces from dead weights, in both directions', 'ten-point-force', { applied: 'weights', directions: 'tension, compression' }],
  ['a system loaded by dead weights, in lbf', 'system', { applied: 'weights', unit: 'lbf', output_unit: 'lbf' }],
  ['readings corrected for temperature', 'five-point', { corrected: 'yes' }],
  ['a data sheet, corrected readings, dead weights, mean zero', 'custom-points', { corrected: 'yes', teds: 'yes', applied: 'weights' }],
  ['a data sheet of a torque shaft', 'ten-point-torque', { teds: 'yes' }],
  ['increasing only, degree 1, class 00, in tension', 'iso-376', { use: 'increasing only', degree: '1', class_wanted: '00', class_from: '50', direction: 'tension' }],
  ['eight forces in newtons, degree 2, a quadratic equation', 'iso-376', { capacity: '5000000', unit: 'N', points: '2 5 10 20 40 60 80 100', degree: '2', equation: 'quadratic', class_from: '20', positions: '' }],
  ['a linear equation, increasing only, odd count of forces', 'iso-376', { use: 'increasing only', equation: 'linear', points: '20 30 40 50 60 70 80 90 100', class_from: '40' }],
  ['a large force in newtons', 'ten-point-force', { capacity: '5000000', unit: 'N', degree: '3' }],
  ['an inspection read in another unit than mV/V', 'receiving-inspection', { output_unit: 'V' }],
  ['a box of eight cells', 'summing-box', { cells: '8' }],
];

const variants = VARIANTS.map(([what, id, answers]) => {
  const template = builtInTemplates().find((candidate) => candidate.id === id)!;
  const { plan } = planSheet(template, { ...suggestedAnswers(template), ...answers });
  return { id: `${id}, ${what}`, empty: plan!, filled: withInventedReadings(plan!) };
});

async function computed(plan: SheetPlan): Promise<(at: string) => EngineValue> {
  const engine = new Engine(engineSheets([plan]));
  await engine.calculate();
  const cells = new Map(plan.cells.map(({ at }) => [at, engine.value(plan.name, at)]));
  engine.dispose();
  return (at) => cells.get(at) ?? null;
}

function named(plan: SheetPlan, pattern: RegExp): { name: string; at: string }[] {
  return (plan.names ?? []).flatMap(({ name, range }) => (pattern.test(name) ? [{ name, at: range }] : []));
}

function errors(plan: SheetPlan, value: (at: string) => EngineValue): string[] {
  return plan.cells.flatMap(({ at, formula }) => {
    const found = value(at);
    return found instanceof CellError ? [`${at} ${formula ?? ''}: ${found.error} ${found.message}`] : [];
  });
}

/** A coefficient above the degree in use. */
function unused(plan: SheetPlan, value: (at: string) => EngineValue, name: string): boolean {
  const power = /_a(\d)(_|$)/.exec(name)?.[1];
  return power !== undefined && Number(power) > Number(value(named(plan, /^degree$/)[0].at));
}

describe.each([...sheets, ...variants].map((sheet) => [sheet.id, sheet] as const))('%s', (_, { empty, filled }) => {
  test('empty: no error in any cell, and no result', async () => {
    const value = await computed(empty);
    expect(errors(empty, value)).toEqual([]);
    expect(named(empty, /^(value|plain)_/).map(({ name, at }) => [name, value(at)]).filter(([, found]) => found !== '')).toEqual([]);
  });

  test('with readings: no error in any cell, every result and verdict is there', async () => {
    const value = await computed(filled);
    expect(errors(filled, value)).toEqual([]);
    const missing = named(filled, /^(value|verdict|plain)_/).filter(({ name, at }) => !unused(filled, value, name) && (value(at) === '' || value(at) === null));
    expect(missing).toEqual([]);
  });

  test('with readings: plain formulas and add-in agree', async () => {
    const value = await computed(filled);
    const verdicts = named(filled, /^plain_/)
      .filter(({ name }) => !unused(filled, value, name)).map(({ name, at }) => {
      const { startRow, startColumn } = rangeOf(at);
      const beside = (columns: number) => value(addressOf({ row: startRow, column: startColumn + columns }));
      return [name, beside(-1), value(at), beside(1), beside(2)];
    });
    expect(verdicts.length).toBeGreaterThan(0);
    expect(verdicts.filter(([, , , , verdict]) => verdict !== 'agrees')).toEqual([]);
  });
});
