import type { CellValue } from '../../src/hosts/sheetHost';
import { addressOf, placeOf } from '../../src/hosts/address';
import type { PlanCell, SheetPlan } from '../../src/worksheets/plan';

/** A plan in which every cell of a custom function is the constant that it gives, so that plain formulas alone are left. */
export function plainFormulas(plan: SheetPlan, values: (at: string) => CellValue): SheetPlan {
  const cells = new Map<string, PlanCell>(plan.cells.map((cell) => [cell.at, cell]));
  for (const { at, formula, spill = { rows: 1, columns: 1 }, role } of plan.cells) {
    if (!formula?.includes('PROVE.')) continue;
    const { row, column } = placeOf(at);
    for (let i = 0; i < spill.rows * spill.columns; i += 1) {
      const into = addressOf({ row: row + Math.floor(i / spill.columns), column: column + (i % spill.columns) });
      const look = cells.get(into) ?? { at: into, role };
      cells.set(into, { at: into, role: look.role, format: look.format, ...constant(values(into), `${plan.name}!${into}`) });
    }
  }
  return { ...plan, cells: [...cells.values()] };
}

function constant(value: CellValue, place: string): Pick<PlanCell, 'value'> {
  if (value === null) return {};
  if (typeof value === 'object') throw new Error(`${place}: found ${value.error}; expected a value`);
  return { value };
}
