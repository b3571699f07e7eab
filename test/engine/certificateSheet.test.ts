/** Certificates of whole invented jobs, computed by the engine of the page. */
import { addressOf, rangeOf } from '../../src/hosts/address';
import { pageBreaks } from '../../src/hosts/pageBreaks';
import { FilledSheet } from '../../src/worksheets/filledSheet';
import type { SheetPlan } from '../../src/worksheets/plan';
import type { ReadSheet, ReadValue } from '../../src/worksheets/readSheet';
import { readingsFingerprint } from '../../src/worksheets/record/fingerprint';
import { certifiedJob, type CertifiedJob, ISSUED, type JobToCertify, NUMBER } from '../worksheets/certificate/certifiedJobs';

const JOBS: readonly (readonly [what: string, job: JobToCertify, shown: readonly string[]])[] = [
  ['a run of ten points, adjusted', { template: 'ten-point-force', adjusted: true }, ['mean_compression', 'fitted_compression', 'found_compression', 'a0', 'a2', 'residual_sd', 'limit_factor', 'class_a', 'nonlinearity', 'sensitivity', 'expanded_output', 'coverage_factor', 'worst_before', 'worst_shift', 'outcome_before']],
  ['five points in tension and compression, not adjusted', { template: 'five-point', answers: { directions: 'tension, compression' } }, ['mean_tension', 'mean_compression', 'deviations_tension', 'hysteresis_compression', 'asymmetry', 'expanded_load_tension', 'decision_tension', 'worst_after']],
  ['a force-proving instrument', { template: 'iso-376' }, ['proving_forces', 'proving_xr', 'proving_w', 'proving_class', 'interpolation_a0', 'equation_raised', 'worst_b', 'class_from']],
  ['a system as found and as left', { template: 'system', answers: { output_unit: 'kN', resolution: '0.001' } }, ['errors_as_found', 'errors_as_left', 'verdicts_as_left', 'greatest_error_as_left', 'expanded_output_as_found', 'verdict_overall_as_found', 'verdict_overall_as_left']],
  ['two points', { template: 'two-point' }, ['sensitivity', 'repeatability', 'expanded']],
];

describe.each(JOBS)('%s', (_, told, shown) => {
  let done: CertifiedJob;
  let plan: SheetPlan;
  beforeAll(async () => {
    done = await certifiedJob(told);
    expect(done.certificate.missing).toEqual([]);
    plan = done.certificate.plan!;
  }, 180_000);
  const value = (at: string) => done.value(plan.name, at);
  const range = (name: string) => plan.names?.find((entry) => entry.name === name)?.range;
  const listed = (name: string) => addressesOf(range(name)!).map(value);

  test('states what belongs to it, and no cell is an error', () => {
    expect(shown.filter((id) => range(`shown_${id}`) === undefined || listed(`shown_${id}`).every((held) => held === null || held === ''))).toEqual([]);
    expect(plan.cells.filter(({ at }) => typeof value(at) === 'object' && value(at) !== null).map(({ at }) => at)).toEqual([]);
  });

  test('shows of each result what its own sheet holds, to the last digit', () => {
    const sources = [done.run, done.comparison].filter((sheet): sheet is ReadSheet => sheet !== undefined).map((sheet) => new FilledSheet(sheet));
    const held = (id: string): ReadValue[] | undefined => {
      const cells = sources.flatMap((sheet) => [sheet.columns(`value_${id}`)?.[0] ?? sheet.columns(id)?.[0]]).find((column) => column !== undefined);
      return cells?.map((cell) => cell.value);
    };
    const names = (plan.names ?? []).flatMap(({ name }) => /^shown_(?!u_|decided|tolerance|decision|fitted)(.+)$/.exec(name)?.[1] ?? []);
    expect(names.length).toBeGreaterThan(5);
    const unlike = names.filter((id) => JSON.stringify(listed(`shown_${id}`).map((one) => (one === '' ? null : one))) !== JSON.stringify(held(id)));
    expect(unlike).toEqual([]);
  });

  test('types no number: but the day of issue and the ends of limit lines every one is a formula', () => {
    const numbers = plan.cells.filter((cell) => typeof cell.value === 'number' && cell.value !== 0).map((cell) => cell.value);
    expect(numbers).toEqual([ISSUED]);
  });

  test('shows U to two significant digits, and outputs to the same decimal place', () => {
    const cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
    const decimals = (at: string) => (cells.get(at)?.format?.split('.')[1]?.replace('%', '').length ?? 0);
    for (const { name, range: over } of (plan.names ?? []).filter((entry) => entry.name.startsWith('shown_u_'))) {
      const [, at] = addressesOf(over);
      const digits = Number(value(at)).toFixed(decimals(at)).replace('.', '').replace(/^0+/, '');
      expect(digits).toHaveLength(2);
      const [, mean] = addressesOf(range(name.replace('shown_u_', 'shown_mean_'))!);
      expect(decimals(mean)).toBe(decimals(at));
    }
  });

  test('takes two pages at most, with its number at the foot, locked', () => {
    expect(pageBreaks(plan).length).toBeLessThanOrEqual(1);
    expect(plan.print?.foot).toBe(`Certificate ${NUMBER}, Saltmarsh Force Bench (invented)`);
    expect(plan.locked).toBe(true);
    expect(plan.cells.filter(({ role }) => role === 'input')).toEqual([]);
  });

  test('carries the fingerprint of the readings, its number and its item', () => {
    expect([value(range('certificate_fingerprint')!), value(range('certificate_number')!), value(range('certificate_item')!), value(range('certificate_run')!)])
      .toEqual([`Readings SHA-256 ${readingsFingerprint(done.run)}`, NUMBER, 'Cell A, Invented cell, DEMO-0017', done.run.name]);
  });

  test('charts lie over cells that hold numbers, as many for x as for y', () => {
    for (const { series } of plan.charts ?? []) {
      for (const { x, y } of series) {
        expect(addressesOf(x).map((at) => typeof value(at))).toEqual(addressesOf(x).map(() => 'number'));
        expect(addressesOf(y)).toHaveLength(addressesOf(x).length);
        expect(addressesOf(y).some((at) => typeof value(at) === 'number')).toBe(true);
      }
    }
  });
});

function addressesOf(range: string): string[] {
  const { startRow, endRow, startColumn, endColumn } = rangeOf(range);
  return Array.from({ length: endRow - startRow + 1 }, (_, i) => Array.from({ length: endColumn - startColumn + 1 }, (__, j) => addressOf({ row: startRow + i, column: startColumn + j }))).flat();
}
