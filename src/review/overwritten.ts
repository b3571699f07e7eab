import type { FilledCell } from '../worksheets/filledSheet';
import type { PlanCell } from '../worksheets/plan';
import { address } from '../worksheets/planBuilder';
import { sameFormula } from '../worksheets/record/sameContent';
import type { ExpectedPlan } from './expectedPlan';
import { found, held } from './finding';
import { columnsOfFormulas } from './formulaColumns';
import type { ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';

/** Beyond this part of formulas that differ, the sheet is of another version of its template, and nothing is told by the plan. */
const OTHER_VERSION = 0.2;

/** Cells whose formula is gone or another one, and fixed numbers that are others: by the plan of the sheet where it is known, else by like formulas round about. */
export function overwritten(sheet: ReviewedSheet, expected: ExpectedPlan | undefined): ReviewFinding[] {
  const byPlan = expected && comparedToPlan(sheet, expected);
  return byPlan ?? columnsOfFormulas(sheet);
}

function comparedToPlan(sheet: ReviewedSheet, { plan }: ExpectedPlan): ReviewFinding[] | undefined {
  const planned = plan.cells.filter(({ role }) => role !== 'input');
  const formulas = planned.filter(({ formula }) => formula !== undefined);
  const findings = formulas.flatMap((cell) => formulaFinding(sheet, cell));
  if (findings.length > OTHER_VERSION * formulas.length) return undefined;
  const spilled = new Set(formulas.flatMap(spillOf));
  const forces = forcesAsPlanned(sheet, plan.cells);
  return [
    ...findings,
    ...planned.filter(({ value, at }) => typeof value === 'number' && forces(at)).flatMap((cell) => numberFinding(sheet, cell)),
    ...[...spilled].flatMap((at) => (sheet.at(at).formula === undefined ? [] : [found(sheet, { at }, 'overwritten', `${at} holds the formula ${sheet.at(at).formula}; expected it to be filled by the formula that spills there`)])),
  ];
}

function formulaFinding(sheet: ReviewedSheet, { at, formula = '' }: PlanCell): ReviewFinding[] {
  const cell = sheet.at(at);
  if (cell.formula !== undefined && sameFormula(cell.formula, formula)) return [];
  return [found(sheet, cell, 'overwritten', `${at} holds ${cell.formula === undefined ? held(cell.value, cell.format) : `the formula ${cell.formula}`}; expected the formula ${formula}`)];
}

function numberFinding(sheet: ReviewedSheet, { at, value }: PlanCell): ReviewFinding[] {
  const cell = sheet.at(at);
  if (cell.value === value && cell.formula === undefined) return [];
  return [found(sheet, cell, 'overwritten', `${at} holds ${cell.formula === undefined ? held(cell.value) : `the formula ${cell.formula}`}; expected ${String(value)}, as the sheet is built`)];
}

/**
 * Applied values may have been typed in place of the planned ones, on a sheet built for that. If half of them or more are others,
 * they were; if few are, these are looked at.
 */
function forcesAsPlanned(sheet: ReviewedSheet, cells: readonly PlanCell[]): (at: string) => boolean {
  const typed = new Set<string>();
  const planned = new Map(cells.map(({ at, value }) => [at, value]));
  for (const id of sheet.cells.namesAfter('forces_')) {
    const column = sheet.column(`forces_${id}`).flatMap((cell): FilledCell[] => (sheet.has('scale') ? [cell, sheet.beside(cell, -1)] : [cell]));
    const loaded = column.filter(({ value }) => value !== 0);
    if (loaded.filter(({ at, value }) => planned.get(at) !== value).length * 2 >= loaded.length) column.forEach(({ at }) => typed.add(at));
  }
  return (at) => !typed.has(at);
}

/** Cells that a formula of the plan spills into, its own left out. */
function spillOf({ at, spill }: PlanCell): string[] {
  if (!spill) return [];
  const [, letters, digits] = /^([A-Z]+)(\d+)$/.exec(at) as RegExpExecArray;
  const left = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
  return Array.from({ length: spill.rows * spill.columns }, (_, i) => address(left + (i % spill.columns), Number(digits) + Math.floor(i / spill.columns))).slice(1);
}
