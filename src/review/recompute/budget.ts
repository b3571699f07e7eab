import type { FilledCell } from '../../worksheets/filledSheet';
import { coverage } from '../independent/student';
import { numberIn, type ReviewedSheet } from '../reviewedSheet';
import type { Expectations } from './expectations';

const PROBABILITY = 0.9545;
const DIVISORS: Readonly<Record<string, number>> = {
  normal: 2, rectangular: Math.sqrt(3), triangular: Math.sqrt(6), ushaped: Math.sqrt(2), resolution: Math.sqrt(12),
};
/** Columns of a budget, as seen from that of the contributions. */
const [DISTRIBUTION, VALUE, DIVISOR, DOF, SENSITIVITY] = [-5, -4, -3, -2, -1];

/** A decision to be taken with an uncertainty. */
export interface Decision {
  readonly value: number | undefined;
  /** Half-width of the tolerance, in the unit of the value. */
  readonly limit: number | undefined;
  /** What the relative U is multiplied by to be in that unit. */
  readonly per: number;
}

/** What a budget is told of the run. */
export interface BudgetFigures {
  readonly block: string;
  /** Ends the names of its cells. */
  readonly suffix: string;
  readonly complete: boolean;
  /** Greatest output and load, magnitudes. */
  readonly output: number | undefined;
  readonly load: number | undefined;
  readonly decision?: Decision;
}

interface Component {
  readonly value: number;
  readonly dof: number;
}

/** Contributions, combined and expanded uncertainty, and the decision, from what stands in the lines of the budget. */
export function budget(expect: Expectations, { block, suffix, complete, output, load, decision }: BudgetFigures): void {
  const { sheet } = expect;
  const contributions = sheet.all(`components_${block}`);
  const components = contributions.flatMap((cell) => componentOf(expect, cell));
  const id = (name: string) => `${name}${suffix}`;
  if (contributions.length === 0) return;
  if (!complete || components.length === 0) {
    ['uncertainty', 'dof', 'coverage_factor', 'expanded', 'expanded_output', 'expanded_load'].forEach((name) => expect.result(id(name), null));
    expect.cell(sheet.cells.cell(id('decision')), null);
    return;
  }
  const squares = components.map(({ value }) => value ** 2);
  const total = squares.reduce((sum, square) => sum + square, 0);
  if (total === 0) return;
  const combined = Math.sqrt(total);
  const share = squares.reduce((sum, square, i) => sum + (square / total) ** 2 / components[i].dof, 0);
  const k = coverage(PROBABILITY, 1 / share);
  const expanded = k * combined;
  expect.result(id('uncertainty'), combined, { scale: 0 }).result(id('coverage_factor'), k).result(id('expanded'), expanded, { scale: 0 });
  expect.result(id('dof'), share > 0 ? 1 / share : 'infinite');
  if (output !== undefined) expect.result(id('expanded_output'), expanded * output, { scale: 0 });
  if (load !== undefined) expect.result(id('expanded_load'), expanded * load, { scale: 0 });
  if (decision) expect.cell(sheet.cells.cell(id('decision')), decided(decision, expanded, sheet.cells.text(id('decision_rule'))));
}

function componentOf(expect: Expectations, cell: FilledCell): Component[] {
  const { sheet } = expect;
  const at = (column: number) => sheet.beside(cell, column);
  const divisor = DIVISORS[wordIn(sheet, cell)];
  const [value, sensitivity] = [numberIn(at(VALUE)), numberIn(at(SENSITIVITY)) ?? 0];
  if (divisor === undefined) return [];
  expect.cell(at(DIVISOR), divisor);
  if (value === undefined) {
    if (at(VALUE).value === null) expect.cell(cell, null);
    return [];
  }
  const contribution = (value / divisor) * sensitivity;
  expect.cell(cell, contribution, { scale: 0 });
  return [{ value: contribution, dof: numberIn(at(DOF)) ?? Infinity }];
}

function wordIn(sheet: ReviewedSheet, cell: FilledCell): string {
  const { value } = sheet.beside(cell, DISTRIBUTION);
  return typeof value === 'string' ? value.trim().toLowerCase() : '';
}

/** Pass or fail; with a guard band of U also with conditions. A border belongs to the better side. */
function decided({ value, limit, per }: Decision, expanded: number, rule: string | undefined): string | null | undefined {
  if (value === undefined || limit === undefined) return null;
  const guard = rule === 'guarded' ? expanded * per : 0;
  const distance = limit - Math.abs(value);
  const reaches = (border: number) => distance >= border - 1e-15 * Math.max(Math.abs(value), limit, guard);
  if (rule !== 'guarded' && rule !== 'simple') return undefined;
  if (reaches(guard)) return 'pass';
  if (guard > 0 && reaches(0)) return 'conditional pass';
  return guard > 0 && reaches(-guard) ? 'conditional fail' : 'fail';
}
