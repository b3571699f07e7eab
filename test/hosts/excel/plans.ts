/** Plans that the Excel host is tried with, what their formulas give, and what must be read back of them. */
import { addressOf, placeOf } from '../../../src/hosts/address';
import type { CellContent } from '../../../src/hosts/sheetHost';
import type { PlanCell, SheetPlan } from '../../../src/worksheets/plan';
import { plan as samplePlan, VALUES } from '../samplePlan';
import type { Results, Shown } from './fakeState';

export interface Planned {
  readonly plan: SheetPlan;
  readonly valueOf: (at: string) => Shown;
}

export const sample: Planned = { plan: samplePlan, valueOf: (at) => VALUES[at] ?? null };

const ROWS = 60;
const TEXTS = [
  '=1+1', '+49 30', '-', '@home', 'TRUE', 'false', '12', '1/2', '3e5', '10 %', '#N/A', "'quoted'", 'Mar 1', '2026-11-25', ' 7', '€5', '1:30',
  'Deviation', 'Ünits and words', 'A long remark that was typed on 25 November 2026, by hand', 'two\nlines',
];

/** A sheet of about 600 cells: texts of every kind, numbers, formulas, and two formulas that spill. */
export const large: Planned = { plan: largePlan(), valueOf: largeValue };

function largePlan(): SheetPlan {
  const cells: PlanCell[] = [{ at: 'A1', role: 'title', value: 'A large sheet' }];
  for (let row = 3; row < 3 + ROWS; row += 1) {
    cells.push({ at: `A${row}`, role: 'label', value: TEXTS[row % TEXTS.length] });
    for (const column of ['B', 'C', 'D']) cells.push({ at: `${column}${row}`, role: 'input', value: row / 7, format: '0.0000' });
    for (const column of ['E', 'F', 'G']) cells.push({ at: `${column}${row}`, role: 'result', formula: `=${column}$1+B${row}`, ...(row % 2 ? { format: '0.00%' } : {}) });
    cells.push({ at: `H${row}`, role: 'input', value: row % 2 === 0 });
    cells.push({ at: `I${row}`, role: 'reference' });
  }
  cells.push({ at: 'K3', role: 'header', formula: '=SEQUENCE(30,2)', spill: { rows: 30, columns: 2 }, format: '0' });
  cells.push({ at: 'N3', role: 'result', formula: '=TRANSPOSE(B3:B32)', spill: { rows: 1, columns: 1 } });
  return {
    name: 'Large', columns: [30, 12, 12, 12], cells, merges: ['A1:D1', 'F1:G1'], names: [{ name: 'inputs', range: 'B3:D62' }],
    charts: [{ title: 'Row', over: 'P3:W20', x: 'x', y: 'y', series: [{ name: 'Across', x: 'B3:D3', y: 'E3:G3', drawn: 'both' }] }],
  };
}

function largeValue(at: string): Shown {
  const { row, column } = placeOf(at);
  if (column === 10 || column === 11) return row < 2 || row > 31 ? null : row * 2 + column;
  return row * 100 + column / 3;
}

/** What each formula of a plan gives, for the stand-in. */
export function resultsOf(...planned: readonly Planned[]): Results {
  return new Map(planned.flatMap(({ plan, valueOf }) => plan.cells.flatMap(({ at, formula, spill }) => {
    if (formula === undefined) return [];
    const { row, column } = placeOf(at);
    const rows = Array.from({ length: spill?.rows ?? 1 }, (_, down) =>
      Array.from({ length: spill?.columns ?? 1 }, (__, right) => valueOf(addressOf({ row: row + down, column: column + right }))));
    return [[formula, rows] as const];
  })));
}

/** The cells that must be read back, worked out from the plan alone. */
export function expectedCells({ plan, valueOf }: Planned): CellContent[] {
  const planned = new Map(plan.cells.map((cell) => [cell.at, cell]));
  const cells = new Map<string, CellContent>();
  const put = (at: string, rest: Omit<CellContent, 'at'>, format = planned.get(at)?.format): void => {
    cells.set(at, { at, ...rest, ...(format === undefined ? {} : { format }) });
  };
  for (const { at, value, formula, spill, format } of plan.cells) {
    if (formula === undefined) {
      if (value !== undefined && value !== '') put(at, { value });
      continue;
    }
    put(at, { value: valueOf(at) ?? 0, formula });
    const { row, column } = placeOf(at);
    for (let i = 1; i < (spill?.rows ?? 1) * (spill?.columns ?? 1); i += 1) {
      const columns = spill?.columns ?? 1;
      const into = addressOf({ row: row + Math.floor(i / columns), column: column + (i % columns) });
      const shared = valueOf(into);
      if (shared !== null) put(into, { value: shared }, planned.has(into) ? planned.get(into)?.format : format);
    }
  }
  const order = (at: string): number => placeOf(at).row * 1000 + placeOf(at).column;
  return [...cells.values()].sort((a, b) => order(a.at) - order(b.at));
}
