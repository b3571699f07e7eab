import { type Line, lineThrough } from '../independent/line';
import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import { worst, type Expected } from './expected';
import { Expectations } from './expectations';
import { mean } from './series';

interface Row {
  readonly chamber: number | undefined;
  readonly temperature: number;
  readonly soak: number;
  readonly zero: number;
  readonly span: number;
}

/** Temperature effects on zero and span, with their standard errors, from the typed rows. */
export function thermalExpected(sheet: ReviewedSheet): readonly Expected[] {
  const expect = new Expectations(sheet);
  const column = (name: string) => sheet.column(name).map(numberIn);
  const [chamber, temperature, soak, zero, loaded] = ['planned_temperature', 'typed_temperature', 'typed_soak', 'typed_zero', 'typed_loaded'].map(column);
  const rows = temperature.flatMap((at, i): Row[] => (at === undefined || soak[i] === undefined || zero[i] === undefined || loaded[i] === undefined
    ? [] : [{ chamber: chamber[i], temperature: at, soak: soak[i], zero: zero[i], span: loaded[i] - zero[i] }]));
  const typed = [temperature, soak, zero, loaded].flat().filter((value) => value !== undefined).length;
  if (rows.length < (sheet.number('needed_rows') ?? Infinity) || typed !== 4 * rows.length) return expect.nothingYet();
  const temperatures = rows.map((row) => row.temperature);
  const zeros = lineThrough(temperatures, rows.map((row) => row.zero));
  const spans = lineThrough(temperatures, rows.map((row) => row.span));
  const reference = sheet.number('reference_temperature');
  if (!zeros || !spans || reference === undefined) return expect.list;
  ofZero(expect, rows, zeros, reference);
  ofSpan(expect, rows, spans, reference);
  expect.result('soak', Math.min(...rows.map((row) => row.soak)));
  if (rows.every((row) => row.chamber !== undefined)) expect.result('settled', Math.max(...rows.map((row) => Math.abs(row.temperature - (row.chamber as number)))));
  return expect.list;
}

function ofZero(expect: Expectations, rows: readonly Row[], line: Line, reference: number): void {
  const rated = expect.sheet.number('rated_output');
  const ofRated = (value: number | undefined) => (rated === undefined ? null : value === undefined ? undefined : value / rated);
  const scale = Math.max(...rows.map(({ zero }) => Math.abs(zero)));
  expect.result('zero_slope', line.slope, { scale }).result('zero_effect', ofRated(line.slope), { scale }).result('zero_effect_10', ofRated(10 * line.slope), { scale });
  expect.result('zero_error', ofRated(line.sd === undefined ? undefined : (10 * line.sd) / Math.sqrt(line.spread)), { scale });
  expect.result('zero_at_reference', line.at(reference), { scale });
  const off = worst(rows.map(({ temperature, zero }) => zero - line.at(temperature)));
  expect.result('zero_deviation', rated === undefined ? null : { value: off.value / rated, scale: 1, eitherSign: off.eitherSign });
}

/** The standard error of slope/constant to first order: both parts are independent of each other about the mean temperature. */
function ofSpan(expect: Expectations, rows: readonly Row[], line: Line, reference: number): void {
  const atReference = line.at(reference);
  const effect = line.slope / atReference;
  expect.result('span_effect', effect).result('span_effect_10', 10 * effect).result('span_at_reference', atReference, { scale: atReference });
  if (line.sd !== undefined) {
    const spans = mean(rows.map(({ span }) => span)) as number;
    const error = Math.sqrt((line.sd ** 2 / line.spread) * (spans / atReference) ** 2 + (effect * line.sd) ** 2 / rows.length) / Math.abs(atReference);
    expect.result('span_error', 10 * error);
  }
  const off = worst(rows.map(({ temperature, span }) => (span - line.at(temperature)) / atReference));
  expect.result('span_deviation', { ...off, scale: 1 });
}
