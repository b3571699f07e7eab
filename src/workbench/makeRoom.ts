import type { SheetContent, SheetHost } from '../hosts/sheetHost';
import { addressesOf, areaFrom } from '../worksheets/area';
import { firstWorkbook } from '../worksheets/firstWorkbook';
import type { SheetPlan } from '../worksheets/plan';

/**
 * Takes the sheets of the first workbook that nobody changed out of the workbook, so that a job's holds the job alone; they
 * come back by undo, or as the first workbook. Gives their names. The last sheet of a workbook stays.
 */
export async function makeRoom(host: Pick<SheetHost, 'sheets' | 'read' | 'remove'>): Promise<readonly string[]> {
  const gone: string[] = [];
  for (const plan of firstWorkbook()) {
    const sheets = await host.sheets();
    if (sheets.length < 2 || !sheets.some(({ name }) => name === plan.name)) continue;
    if (!isAsPlanned(plan, await host.read(plan.name))) continue;
    await host.remove(plan.name);
    gone.push(plan.name);
  }
  return gone;
}

/** Whether a sheet holds the constants and formulas of its plan, and nothing else but what those formulas give. */
function isAsPlanned(plan: SheetPlan, { cells }: SheetContent): boolean {
  const planned = new Map(plan.cells.map(({ at, formula, value }) => [at, formula ?? value]));
  const held = new Map(cells.map(({ at, formula, value }) => [at, formula ?? value]));
  const spilled = spilledCells(plan);
  const all = new Set([...planned.keys(), ...held.keys()]);
  return [...all].every((at) => spilled.has(at) || (planned.get(at) ?? '') === (held.get(at) ?? ''));
}

/** Cells that formulas of the plan spill into. */
function spilledCells(plan: SheetPlan): ReadonlySet<string> {
  return new Set(plan.cells.flatMap(({ at, spill }) => {
    const area = spill && areaFrom(at, spill.rows, spill.columns);
    return area ? addressesOf(area).flat().filter((cell) => cell !== at) : [];
  }));
}
