import type { SheetContent } from '../../../src/hosts/sheetHost';
import type { SheetPlan } from '../../../src/worksheets/plan';
import { FakeHost } from '../fakes';

/** What a planned sheet holds before anything is computed: its constants, and formulas that gave nothing yet. */
export function contentOf({ name, cells, merges = [], names = [] }: SheetPlan): SheetContent {
  const held = cells.flatMap(({ at, value, formula, format }) => (value === undefined && formula === undefined ? [] : [{ at, value: value ?? null, ...(formula === undefined ? {} : { formula }), ...(format === undefined ? {} : { format }) }]));
  return { name, cells: held, merges, names };
}

/** A workbook in memory that keeps what is written to it. */
export class PlanHost extends FakeHost {
  override async write(plan: SheetPlan, options: { readonly replace?: boolean } = {}): Promise<void> {
    await super.write(plan, options);
    this.content.set(plan.name, contentOf(plan));
  }

  /** What a cell holds. */
  valueAt(sheet: string, at: string): unknown {
    return this.content.get(sheet)?.cells.find((cell) => cell.at === at)?.value ?? null;
  }

  all(): readonly SheetContent[] {
    return [...this.content.values()];
  }
}
