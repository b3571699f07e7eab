import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import type { Expected } from './expected';
import { Expectations } from './expectations';

/** What a summing box should give: Σ(X/R)/Σ(1/R) of its cells, the mean without resistances. */
export function summingExpected(sheet: ReviewedSheet): readonly Expected[] {
  const expect = new Expectations(sheet);
  const column = (name: string) => sheet.column(name).map(numberIn);
  const [zeros, loaded, ohms] = ['typed_zero', 'typed_loaded', 'output_resistances'].map(column);
  const isMissing = (values: readonly (number | undefined)[]) => values.length === 0 || values.some((value) => value === undefined);
  const withOhms = ohms.some((value) => value !== undefined);
  if (isMissing(zeros) || isMissing(loaded) || (withOhms && isMissing(ohms))) return expect.nothingYet();
  const weights = ohms.map((resistance) => (withOhms ? 1 / (resistance as number) : 1));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const joined = (outputs: readonly (number | undefined)[]) => outputs.reduce<number>((sum, output, i) => sum + (output as number) * weights[i], 0) / all;
  const [zero, load] = [joined(zeros), joined(loaded)];
  const scale = Math.abs(load);
  expect.result('box_zero', zero, { scale }).result('box_loaded', load, { scale }).result('box_change', load - zero, { scale });
  const [readZero, readLoaded, rated] = ['box_read_zero', 'box_read_loaded', 'rated_output'].map((name) => sheet.number(name));
  expect.result('zero_difference', readZero === undefined || rated === undefined ? null : (readZero - zero) / rated);
  expect.result('change_difference', readZero === undefined || readLoaded === undefined ? null : (readLoaded - readZero) / (load - zero) - 1);
  return expect.list;
}
