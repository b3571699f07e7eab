/** The sheet of a force-proving instrument, computed: readings changed by hand, and what becomes of class, verdict and findings. */
import { addressOf, placeOf } from '../../src/hosts/address';
import { engineSheets } from '../../src/hosts/file/engineSheets';
import { checkSheet } from '../../src/worksheets/check/checkSheet';
import { withInventedReadings } from '../../src/worksheets/data/inventedReadings';
import { builtInTemplates } from '../../src/worksheets/library';
import { planSheet, suggestedAnswers } from '../../src/worksheets/planner';
import { sheetPlots } from '../../src/worksheets/plots/sheetPlots';
import type { Answers } from '../../src/worksheets/question';
import { computed } from './bundle';

const template = builtInTemplates().find(({ id }) => id === 'iso-376')!;

/** A computed sheet: values by name and place, cells to type into. */
async function sheetOf(answers: Answers = {}) {
  const plan = withInventedReadings(planSheet(template, { ...suggestedAnswers(template), ...answers }).plan!);
  const engine = await computed(...engineSheets([plan]));
  const at = (name: string, down = 0, right = 0) => {
    const { row, column } = placeOf(plan.names!.find((entry) => entry.name === name)!.range.split(':')[0]);
    return addressOf({ row: row + down, column: column + right });
  };
  return {
    at,
    value: (name: string, down = 0, right = 0) => engine.value(plan.name, at(name, down, right)),
    type: (value: number | null, name: string, down = 0, right = 0) => engine.set(plan.name, at(name, down, right), value),
    read: () => engine.sheetsHost().read(plan.name),
  };
}

/** Ten forces from 10 kN on, a row each after the zero. */
const ROW = { kN10: 1, kN50: 5, kN100: 10, down50: 15 };

test('X2 off by 0.15 % at 10 kN: b′ is as worked out by hand, class 1 holds from 20 kN only, and the verdicts say so', async () => {
  const sheet = await sheetOf();
  expect([sheet.value('value_class_from'), sheet.value('verdict_class_from'), sheet.value('verdict_overall')]).toEqual([10, 'within', 'within specification in all 9 judged']);
  const [zero1, zero2] = [Number(sheet.value('readings_first_position')), Number(sheet.value('readings_first_position', 0, 1))];
  const x1 = Number(sheet.value('readings_first_position', ROW.kN10)) - zero1;
  await sheet.type(Number((zero2 + 1.0015 * x1).toFixed(6)), 'readings_first_position', ROW.kN10, 1);
  const x2 = Number(sheet.value('readings_first_position', ROW.kN10, 1)) - zero2;
  const expected = Math.abs(x2 - x1) / Math.abs((x1 + x2) / 2);
  expect(expected).toBeGreaterThan(0.001);
  expect(Number(sheet.value('value_b_same_lowest'))).toBeCloseTo(expected, 12);
  expect(Number(sheet.value('value_worst_b_same'))).toBeCloseTo(expected, 12);
  expect([sheet.value('value_class_from'), sheet.value('verdict_class_from'), sheet.value('verdict_worst_b_same'), sheet.value('verdict_worst_b')]).toEqual([20, 'outside', 'outside', 'within']);
  expect(sheet.value('verdict_overall')).toBe('outside in 2 of 9 judged');
});

test('a limit that is typed anew, and another class, are what the readings are judged by', async () => {
  const sheet = await sheetOf({ class_wanted: '00' });
  expect([sheet.value('value_class_from'), sheet.value('verdict_force_u')]).toEqual(['not met', 'outside']);
  await sheet.type(0.0001, 'standard_uncertainty');
  expect([sheet.value('value_class_from'), sheet.value('verdict_force_u')]).toEqual([10, 'within']);
});

test('without the uncertainty of the forces the class is not complete', async () => {
  const sheet = await sheetOf();
  await sheet.type(null, 'standard_uncertainty');
  expect([sheet.value('value_not_judged'), sheet.value('verdict_not_judged'), sheet.value('verdict_force_u')]).toEqual([1, 'outside', '']);
});

test('a reading taken away: every result waits, and Check names the series and the cell', async () => {
  const sheet = await sheetOf();
  await sheet.type(null, 'readings_rotated', ROW.down50, 1);
  expect([sheet.value('value_class_from'), sheet.value('value_worst_b'), sheet.value('plain_wc_greatest'), sheet.value('verdict_overall')]).toEqual(['', '', '', 'open: readings are missing']);
  expect(checkSheet(await sheet.read())).toEqual([expect.objectContaining({ severity: 'missing', at: sheet.at('readings_rotated', ROW.down50, 1) })]);
});

test('two readings of the decreasing forces swapped are found where they stand', async () => {
  const sheet = await sheetOf();
  const [first, second] = [Number(sheet.value('readings_rotated', ROW.down50)), Number(sheet.value('readings_rotated', ROW.down50 + 1))];
  await sheet.type(second, 'readings_rotated', ROW.down50);
  await sheet.type(first, 'readings_rotated', ROW.down50 + 1);
  expect(checkSheet(await sheet.read())).toEqual(expect.arrayContaining([expect.objectContaining({ severity: 'wrong', at: sheet.at('readings_rotated', ROW.down50), message: expect.stringContaining('look swapped') })]));
});

test('increasing only: creep by hand is what the sheet has, no v is asked for, and results wait for the two readings', async () => {
  const sheet = await sheetOf({ use: 'increasing only' });
  const output = Math.abs(Number(sheet.value('value_xr_greatest')));
  const [early, late] = [Number(sheet.value('readings_creep')), Number(sheet.value('readings_creep', 1))];
  expect(Number(sheet.value('value_creep'))).toBeCloseTo(Math.abs(late - early) / output, 12);
  expect(sheet.value('value_not_judged')).toBe(0);
  await sheet.type(null, 'readings_creep', 1);
  expect([sheet.value('value_creep'), sheet.value('verdict_overall')]).toEqual(['', 'open: readings are missing']);
});

test('the pane plots the figures in per cent with the limits of the class wanted', async () => {
  const sheet = await sheetOf({ class_wanted: '0.5' });
  const plots = sheetPlots(await sheet.read());
  const [deviations] = plots;
  expect(deviations.series.map(({ name, drawn }) => [name, drawn])).toEqual([['b, with rotation', 'both'], ['b′, same position', 'both'], ['Limit of b', 'limit'], ['Limit of b′', 'limit']]);
  expect(deviations.series[2].y).toEqual(Array.from({ length: 10 }, () => 0.1));
  expect(deviations.series[0].y[0]).toBeCloseTo(100 * Number(sheet.value('value_b_lowest')), 12);
  expect(plots.find(({ id }) => id === 'proving_v')?.series[0].x).toEqual([10, 20, 30, 40, 50, 60, 70, 80, 90]);
  expect(plots.map(({ x }) => x)).toEqual(plots.map(() => 'Force, kN'));
});

test('a resolution that a class of this standard bears is not held to the rules of another standard', async () => {
  const sheet = await sheetOf();
  await sheet.type(0.0001, 'resolution');
  expect(sheet.value('verdict_relative_resolution')).toBe('within');
  expect(checkSheet(await sheet.read())).toEqual([]);
});
