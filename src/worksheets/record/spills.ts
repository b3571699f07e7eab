import type { ReadCell, ReadSheet } from '../readSheet';
import { type Area, addressesOf, areaFrom, areaOf } from '../area';

/** A cell as a host may give it: some also tell what a formula spills over. */
export interface SpillingCell extends ReadCell {
  readonly spill?: { readonly rows: number; readonly columns: number };
}

/** More cells than anything planned spills over. */
const MOST_CELLS = 2000;

/**
 * The areas that formulas of a sheet spill over, by the address of the formula. Where the host does not tell, a name does: one that
 * begins at a formula of a cell function and holds no other formula. A formula without any has none.
 */
export function spillsOf({ cells, names }: ReadSheet): ReadonlyMap<string, Area> {
  const byAddress = new Map<string, SpillingCell>(cells.map((cell) => [cell.at, cell]));
  const spills = new Map<string, Area>();
  for (const { name, range } of names) {
    const area = areaOf(range);
    if (!area || isOne(area) || size(area) > MOST_CELLS || /^(value|plain|verdict|limit)_/i.test(name)) continue;
    const [anchor, ...others] = addressesOf(area).flat();
    if (!/\bPROVE\./i.test(byAddress.get(anchor)?.formula ?? '') || others.some((at) => byAddress.get(at)?.formula !== undefined)) continue;
    spills.set(anchor, area);
  }
  for (const { at, spill } of byAddress.values()) {
    const area = spill && spill.rows * spill.columns <= MOST_CELLS ? areaFrom(at, spill.rows, spill.columns) : undefined;
    if (area && !isOne(area)) spills.set(at, area);
  }
  return spills;
}

function isOne(area: Area): boolean {
  return size(area) === 1;
}

function size({ left, right, top, bottom }: Area): number {
  return (right - left + 1) * (bottom - top + 1);
}
