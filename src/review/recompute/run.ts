import type { FilledCell } from '../../worksheets/filledSheet';
import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import { budget, type Decision } from './budget';
import { bestDegree, type Calibration, calibration } from './calibration';
import type { Expected } from './expected';
import { Expectations } from './expectations';
import { mean, type Series, seriesOf } from './series';
import { statics } from './statics';

/** Of a line of results, as seen from its value. */
export const LIMIT = 2;

/** Everything that a sheet computes from readings at forces: run sheets, systems and indicators. */
export function runExpected(sheet: ReviewedSheet): readonly Expected[] {
  const expect = new Expectations(sheet);
  const all = seriesOf(sheet);
  all.forEach((series) => ofSeries(expect, series, suffixOf(sheet, series, all.length)));
  asymmetry(expect, all);
  return expect.list;
}

/** What ends the names of a block's results: nothing where a run sheet has one block. */
function suffixOf(sheet: ReviewedSheet, { id }: Series, blocks: number): string {
  const own = sheet.cells.namesAfter('value_').some((name) => name.endsWith(`_${id}`));
  return blocks === 1 && !own ? '' : `_${id}`;
}

function ofSeries(expect: Expectations, series: Series, suffix: string): void {
  const { sheet } = expect;
  const { id, complete } = series;
  const capacity = (sheet.number('capacity') ?? NaN) * (sheet.number('scale') ?? 1);
  tables(expect, series);
  const figures = statics(series, capacity);
  const rated = sheet.number('rated_output');
  const results: Record<string, Parameters<Expectations['result']>[1]> = {
    ...figures,
    rated_output: rated === undefined ? null : figures.sensitivity && { value: Math.abs(figures.sensitivity.value) / rated - 1, scale: 1 },
  };
  const ids = ['sensitivity', 'rated_output', 'zero_balance', 'nonlinearity', 'hysteresis', 'repeatability', 'zero_return', 'combined_error', 'error_band'];
  ids.forEach((name) => expect.result(`${name}${suffix}`, complete ? results[name] : null));
  if (sheet.has('degree')) ofCalibration(expect, series, suffix);
  if (sheet.has(`errors_${id}`)) ofErrors(expect, series);
  budget(expect, {
    block: id, suffix, complete, ...greatest(sheet, series),
    decision: sheet.has(`errors_${id}`) ? ofGreatestLoad(sheet, series) : ofRatedOutput(sheet, suffix, complete ? results.rated_output : undefined),
  });
}

/** Net readings, their means and what is off the terminal line; corrected readings where the sheet corrects. */
function tables(expect: Expectations, series: Series): void {
  const { sheet } = expect;
  const { id, readings, nets, means, forces, top } = series;
  const outputs = nets.flat().flatMap((net) => (net === undefined ? [] : [Math.abs(net)]));
  const scale = Math.max(0, ...outputs);
  const zeroed = series.netted && readings.every((run) => run[0] !== undefined);
  const columns = (name: string): readonly (readonly FilledCell[])[] => sheet.cells.columns(name) ?? [];
  columns(`corrected_${id}`).forEach((cells, run) => expect.column(cells, readings[run] ?? [], { scale }));
  if (zeroed) columns(`net_${id}`).forEach((cells, run) => expect.column(cells, nets[run] ?? [], { scale }));
  if (zeroed && series.complete) expect.column(sheet.column(`mean_${id}`), means, { scale });
  const [topMean, topForce] = [means[top], forces[top]];
  if (topMean === undefined || topForce === undefined || topForce === 0 || topMean === 0 || !series.complete) return;
  expect.column(sheet.column(`deviations_${id}`), means.map((output, row) => {
    const force = forces[row];
    return output === undefined || force === undefined ? undefined : output / topMean - force / topForce;
  }));
}

function ofCalibration(expect: Expectations, series: Series, suffix: string): void {
  const { sheet } = expect;
  const degree = sheet.number('degree');
  const step = sheet.number('resolution');
  const most = coefficientCount(sheet, suffix) - 1;
  if (most < 1 || degree === undefined) return;
  const result = (id: string, value: Parameters<Expectations['result']>[1], scale = 1) => expect.result(`${id}${suffix}`, value, { scale });
  if (!series.complete) {
    ['best_degree', 'residual_sd', 'force_resolution', 'limit_factor', 'class_aa', 'class_a', ...powers(most).map((k) => `a${k}`)].forEach((id) => result(id, null));
    return;
  }
  const found = calibration(series, degree, step ?? 0);
  result('best_degree', bestDegree(series, askedDegree(sheet, suffix) ?? most));
  if (!found) return;
  const [topForce, topOutput] = [Math.abs(series.forces[series.top] as number), Math.abs(series.means[series.top] as number)];
  powers(most).forEach((k) => result(`a${k}`, k > degree ? null : found.fit.coefficients[k], topOutput / topForce ** k));
  // What is left of the fit is a small difference of large numbers.
  result('residual_sd', found.sd, topOutput);
  result('force_resolution', found.resolution, 0);
  result('limit_factor', found.factor, topForce);
  result('class_aa', found.classes?.class_aa, 2000 * topForce);
  result('class_a', found.classes?.class_a, 400 * topForce);
  residuals(expect, series, found, topOutput);
}

function powers(most: number): number[] {
  return Array.from({ length: most + 1 }, (_, k) => k);
}

function coefficientCount(sheet: ReviewedSheet, suffix: string): number {
  return powers(5).filter((k) => sheet.has(`value_a${k}${suffix}`)).length;
}

/** The highest degree that the sheet lets its test look at, where its formula says so. */
function askedDegree(sheet: ReviewedSheet, suffix: string): number | undefined {
  const found = /FITDEGREE\([^()]*,(\d)\)/.exec(sheet.cells.cell(`value_best_degree${suffix}`)?.formula ?? '');
  return found ? Number(found[1]) : undefined;
}

function residuals(expect: Expectations, { id, nets, forces }: Series, { fit }: Calibration, scale: number): void {
  (expect.sheet.cells.columns(`residuals_${id}`) ?? []).forEach((cells, run) => expect.column(cells, (nets[run] ?? []).map((net, row) => {
    const force = forces[row];
    return net === undefined || force === undefined || force === 0 ? undefined : net - fit.at(Math.abs(force));
  }), { scale }));
}

/** Errors of an indication, their tolerances where those are still computed, and how many are outside. */
function ofErrors(expect: Expectations, { id, means, forces, complete }: Series): void {
  const { sheet } = expect;
  const capacity = Math.abs((sheet.number('capacity') ?? NaN) * (sheet.number('scale') ?? 1));
  const errors = means.map((output, row) => (output === undefined || forces[row] === undefined ? undefined : output - (forces[row] as number)));
  const tolerances = sheet.column(`tolerances_${id}`);
  const [ofReading, ofCapacity] = [sheet.number('tolerance_reading'), sheet.number('tolerance_capacity')];
  if (complete) expect.column(sheet.column(`errors_${id}`), errors, { scale: capacity });
  if (ofReading !== undefined && ofCapacity !== undefined) {
    tolerances.forEach((cell, row) => {
      if (cell.formula !== undefined) expect.cell(cell, Math.max(ofReading * Math.abs(forces[row] ?? 0), ofCapacity * capacity));
    });
  }
  const step = sheet.number('resolution') ?? 0;
  const isOutside = (error: number | undefined, row: number) => {
    const tolerance = numberIn(tolerances[row]);
    return error !== undefined && tolerance !== undefined && Math.abs(error) - tolerance > 1e-6 * step;
  };
  const sizes = errors.flatMap((error) => (error === undefined ? [] : [Math.abs(error)]));
  expect.result(`greatest_error_${id}`, complete && sizes.length > 0 ? Math.max(...sizes) : null, { scale: capacity });
  expect.result(`points_outside_${id}`, complete ? errors.filter(isOutside).length : null);
}

function greatest(sheet: ReviewedSheet, { id, means, forces, top }: Series): { output: number | undefined; load: number | undefined } {
  const force = forces[top];
  const output = sheet.has(`errors_${id}`) ? force : means[top];
  return { output: output === undefined ? undefined : Math.abs(output), load: force === undefined ? undefined : Math.abs(force) };
}

function ofGreatestLoad(sheet: ReviewedSheet, { id, means, forces, top }: Series): Decision {
  const [output, force] = [means[top], forces[top]];
  return {
    value: output === undefined || force === undefined ? undefined : output - force,
    limit: numberIn(sheet.column(`tolerances_${id}`)[top]), per: Math.abs(force ?? 0),
  };
}

function ofRatedOutput(sheet: ReviewedSheet, suffix: string, figure: Parameters<Expectations['result']>[1]): Decision | undefined {
  const cell = sheet.cells.cell(`value_rated_output${suffix}`);
  if (!cell) return undefined;
  const value = typeof figure === 'object' && figure !== null ? figure.value : undefined;
  return { value, limit: numberIn(sheet.beside(cell, LIMIT)), per: 1 };
}

/** (|first| − |second|)/mean of both, of two directions. */
function asymmetry(expect: Expectations, all: readonly Series[]): void {
  if (all.length < 2 || !expect.sheet.has('value_asymmetry')) return;
  const capacity = expect.sheet.number('capacity') ?? NaN;
  const outputs = all.map((series) => (series.complete ? statics(series, capacity).sensitivity?.value : undefined));
  const [first, second] = outputs.map((output) => output && Math.abs(output));
  const both = first !== undefined && second !== undefined ? mean([first, second]) as number : undefined;
  expect.result('asymmetry', both === undefined ? null : ((first as number) - (second as number)) / both);
}
