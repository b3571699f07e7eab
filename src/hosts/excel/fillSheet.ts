import type { Entry } from '../../worksheets/plan';
import { addressOf } from '../address';
import { type Hindrance, type PlacedEntry, placedEntries, refuseHindered } from '../entries';
import { isCellEdit } from './errorWords';
import { sheetWords } from './sheetWords';
import { textEntry } from './textEntry';

/**
 * Puts entries into cells of a sheet: one sync to look at them, one to fill. Throws, naming the cell, on what cannot be filled,
 * before anything is; what Excel refuses on the way is taken back.
 */
export async function fillSheet(context: Excel.RequestContext, name: string, entries: readonly Entry[]): Promise<void> {
  const placed = placedEntries(name, entries);
  if (placed.length === 0) return;
  const sheet = context.workbook.worksheets.getItem(name);
  sheet.load('name');
  const { protection } = sheet;
  protection.load('protected');
  const looked = placed.map((entry) => look(sheet, entry));
  await context.sync();
  const found = new Map(looked.map((cell) => [cell.entry.at, cell]));
  refuseHindered(sheet.name, placed, ({ at }) => hindranceOf(found.get(at) as Looked, protection.protected));
  const before = placed.map((entry) => ({ ...entry, value: constantIn(found.get(entry.at) as Looked) }));
  try {
    queueFilling(sheet, placed);
    await context.sync();
  } catch (error) {
    // Excel refuses a batch as a whole while a cell is open, so there is nothing to take back.
    if (!isCellEdit(error)) await takeBack(context, sheet, before, error);
    throw error;
  }
}

function queueFilling(sheet: Excel.Worksheet, entries: readonly PlacedEntry[]): void {
  for (const run of runsOf(entries)) {
    sheet.getRange(`${run[0].at}:${run[run.length - 1].at}`).formulas = run.map(({ value }) => [typed(value)]);
  }
}

/** Excel stops a batch at the first call that fails and leaves what came before it. */
async function takeBack(context: Excel.RequestContext, sheet: Excel.Worksheet, before: readonly PlacedEntry[], error: unknown): Promise<void> {
  try {
    queueFilling(sheet, before);
    await context.sync();
  } catch (second) {
    const cells = before.map(({ at }) => at).join(', ');
    throw new Error(`${sheetWords(error, sheet.name)} Excel then refused to take it back as well: look at ${cells}, which may be filled in part.`, { cause: second });
  }
}

/** A cell as it is before it is filled. */
interface Looked {
  readonly entry: PlacedEntry;
  readonly cell: Excel.Range;
  /** The cell that spills into it, or into itself. */
  readonly source: Excel.Range;
}

function look(sheet: Excel.Worksheet, entry: PlacedEntry): Looked {
  const cell = sheet.getRange(entry.at);
  cell.load('formulas,values');
  cell.format.protection.load('locked');
  const source = cell.getSpillParentOrNullObject();
  source.load('address');
  return { entry, cell, source };
}

function hindranceOf({ cell, source }: Looked, isProtected: boolean): Hindrance | undefined {
  const [formula, value]: unknown[] = [cell.formulas[0][0], cell.values[0][0]];
  if (typeof formula === 'string' && formula.startsWith('=') && formula !== value) return { kind: 'formula' };
  if (!source.isNullObject) return { kind: 'spill', source: source.address.slice(source.address.lastIndexOf('!') + 1).replaceAll('$', '') };
  return isProtected && cell.format.protection.locked ? { kind: 'locked' } : undefined;
}

/** What a cell without a formula holds. */
function constantIn({ cell }: Looked): PlacedEntry['value'] {
  const value: unknown = cell.values[0][0];
  return value === '' ? null : value as PlacedEntry['value'];
}

/** Entries that stand one below the other, so that Excel takes each run in one assignment. */
function runsOf(entries: readonly PlacedEntry[]): PlacedEntry[][] {
  const runs: PlacedEntry[][] = [];
  for (const entry of [...entries].sort((a, b) => a.column - b.column || a.row - b.row)) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run && last && addressOf({ row: last.row + 1, column: last.column }) === entry.at) run.push(entry);
    else runs.push([entry]);
  }
  return runs;
}

/** Empty text empties a cell; text that Excel could read as something else gets its apostrophe. */
function typed(value: PlacedEntry['value']): string | number | boolean {
  if (value === null) return '';
  return typeof value === 'string' ? textEntry(value) : value;
}
