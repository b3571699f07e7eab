import { addressOf, placeOf } from '../../src/hosts/address';
import type { CellValue } from '../../src/hosts/sheetHost';
import type { PlanCell, SheetPlan } from '../../src/worksheets/plan';

/** Plain formulas that give an error, for cells in which a custom function gives it. */
const ERRORS: Readonly<Record<string, string>> = { '#N/A': '=NA()', '#DIV/0!': '=1/0', '#VALUE!': '=1*"text"', '#NUM!': '=SQRT(-1)' };

/** Whether a program without the add-in can compute a formula. */
export function isPlain(formula: string): boolean {
  return !/\bPROVE\./i.test(formula);
}

/** A plan in which every cell of a custom function holds what it gives, so that plain formulas alone are left. */
export function plainFormulas(plan: SheetPlan, values: (at: string) => CellValue): SheetPlan {
  const cells = new Map<string, PlanCell>(plan.cells.map((cell) => [cell.at, cell]));
  for (const { at, formula, spill = { rows: 1, columns: 1 }, role, format } of plan.cells) {
    if (formula === undefined || isPlain(formula)) continue;
    const { row, column } = placeOf(at);
    for (let i = 0; i < spill.rows * spill.columns; i += 1) {
      const into = addressOf({ row: row + Math.floor(i / spill.columns), column: column + (i % spill.columns) });
      const look = cells.get(into) ?? { at: into, role, format };
      cells.set(into, { at: into, role: look.role, format: look.format, ...held(values(into), `${plan.name}!${into}`) });
    }
  }
  return { ...plan, cells: [...cells.values()] };
}

function held(value: CellValue, place: string): Pick<PlanCell, 'value' | 'formula'> {
  if (value === null) return {};
  // Text without letters is not a blank cell: a sum with it is an error.
  if (value === '') return { formula: '=""' };
  if (typeof value !== 'object') return { value };
  const formula = ERRORS[value.error];
  if (!formula) throw new Error(`${place}: found ${value.error}; expected a value, or one of ${Object.keys(ERRORS).join(' ')}`);
  return { formula };
}
