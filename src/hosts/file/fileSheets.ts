import type { Entry, PlanCell, SheetPlan } from '../../worksheets/plan';
import { addressOf, type CellPlace, isInside, placeOf, rangeOf } from '../address';
import { type Hindrance, type PlacedEntry, placedEntries, refuseHindered } from '../entries';
import { type CellValue, type SheetContent, type SheetEntry, type SheetHost, SheetTaken } from '../sheetHost';
import { readWorkbook } from './readWorkbook';
import { writeWorkbook } from './writeWorkbook';

/** Computes the formulas of the sheets of a workbook: gives what each cell of each sheet holds. */
export type Compute = (plans: readonly SheetPlan[]) => Promise<(sheet: string, at: string) => CellValue>;

interface HeldSheet {
  readonly plan: SheetPlan;
  readonly selection?: string;
}

interface Held {
  readonly sheets: readonly HeldSheet[];
  /** Name of the sheet that is shown; "" while there is none. */
  readonly shown: string;
}

/** A workbook in memory that becomes a file (.xlsx). Each change is computed and written at once, so that what the file cannot hold is refused then. */
export class FileSheets implements SheetHost {
  private held: Held = { sheets: [], shown: '' };
  private file: Uint8Array | undefined;
  private readonly listeners: (() => void)[] = [];
  /** The change under way; the next one waits for it. */
  private changing: Promise<unknown> = Promise.resolve();

  constructor(private readonly compute: Compute) {}

  /** The workbook as the bytes of a file. Throws while it has no sheet. */
  async save(): Promise<Uint8Array> {
    await this.changing;
    if (!this.file) throw new Error('The workbook has no sheet; a file needs at least one.');
    return this.file;
  }

  async sheets(): Promise<readonly SheetEntry[]> {
    await this.changing;
    return this.held.sheets.map(({ plan }) => ({ name: plan.name, empty: isEmpty(plan) }));
  }

  write(plan: SheetPlan, { replace = false }: { readonly replace?: boolean } = {}): Promise<void> {
    return this.change(({ sheets }) => {
      const before = sheets.find((sheet) => isNamed(sheet, plan.name));
      if (before && !replace && !isEmpty(before.plan)) throw new SheetTaken(before.plan.name);
      return { sheets: [...sheets.filter((sheet) => sheet !== before), { plan }], shown: plan.name };
    });
  }

  async read(sheet: string): Promise<SheetContent> {
    await this.changing;
    const index = this.held.sheets.indexOf(found(this.held, sheet));
    return readWorkbook(await this.save())[index];
  }

  remove(sheet: string): Promise<void> {
    return this.change((held) => {
      const gone = found(held, sheet);
      const index = held.sheets.indexOf(gone);
      const sheets = held.sheets.filter((other) => other !== gone);
      // As in a program: the next sheet is shown, or the one before if it was the last.
      const neighbour = sheets[Math.min(index, sheets.length - 1)]?.plan.name ?? '';
      return { sheets, shown: isNamed(gone, held.shown) ? neighbour : held.shown };
    });
  }

  fill(sheet: string, entries: readonly Entry[]): Promise<void> {
    return this.change((held) => {
      const filled = found(held, sheet);
      const placed = placedEntries(filled.plan.name, entries);
      refuseHindered(filled.plan.name, placed, (entry) => hindranceIn(filled.plan, entry));
      return { ...held, sheets: held.sheets.map((other) => (other === filled ? { ...other, plan: filledPlan(other.plan, placed) } : other)) };
    });
  }

  select(sheet: string, address: string): Promise<void> {
    return this.change((held) => {
      const selected = found(held, sheet);
      const selection = rangeText(address);
      return { sheets: held.sheets.map((other) => (other === selected ? { ...other, selection } : other)), shown: selected.plan.name };
    });
  }

  async active(): Promise<string> {
    await this.changing;
    if (this.held.sheets.length === 0) throw new Error('The workbook has no sheet.');
    return this.held.shown;
  }

  onChange(listener: () => void): void {
    this.listeners.push(listener);
  }

  /** Takes up a change once its file is written; if that fails, everything stays as it was. */
  private change(next: (held: Held) => Held): Promise<void> {
    const done = this.changing.then(async () => {
      const held = next(this.held);
      this.file = await this.written(held);
      this.held = held;
      this.listeners.forEach((listener) => listener());
    });
    this.changing = done.catch(() => undefined);
    return done;
  }

  private async written({ sheets, shown }: Held): Promise<Uint8Array | undefined> {
    if (sheets.length === 0) return undefined;
    const values = await this.compute(sheets.map(({ plan }) => plan));
    return writeWorkbook(sheets.map((sheet) => ({
      plan: sheet.plan,
      values: (at) => values(sheet.plan.name, at),
      selection: sheet.selection,
      shown: isNamed(sheet, shown),
    })));
  }
}

function found({ sheets }: Held, name: string): HeldSheet {
  const sheet = sheets.find((candidate) => isNamed(candidate, name));
  if (!sheet) throw new Error(`The workbook has no sheet “${name}”.`);
  return sheet;
}

/** Names of sheets are the same whatever the case of their letters. */
function isNamed({ plan }: HeldSheet, name: string): boolean {
  return plan.name.toLowerCase() === name.toLowerCase();
}

function isEmpty({ cells }: SheetPlan): boolean {
  return cells.every(({ value, formula }) => formula === undefined && (value === undefined || value === ''));
}

function hindranceIn({ cells, locked }: SheetPlan, { at, ...place }: PlacedEntry): Hindrance | undefined {
  const own = cells.find((cell) => cell.at === at);
  if (own?.formula !== undefined) return { kind: 'formula' };
  const source = cells.find((cell) => spillsInto(cell, place));
  if (source) return { kind: 'spill', source: source.at };
  return locked && own?.role !== 'input' ? { kind: 'locked' } : undefined;
}

function spillsInto({ at, formula, spill }: PlanCell, place: CellPlace): boolean {
  if (formula === undefined || !spill) return false;
  const { row, column } = placeOf(at);
  return isInside(place, { startRow: row, startColumn: column, endRow: row + spill.rows - 1, endColumn: column + spill.columns - 1 });
}

/** The plan with the values of its cells exchanged; a cell that it does not have yet is one of plain text. */
function filledPlan(plan: SheetPlan, entries: readonly PlacedEntry[]): SheetPlan {
  const values = new Map(entries.map(({ at, value }) => [at, value]));
  const withValue = (cell: PlanCell, value: PlacedEntry['value']): PlanCell => ({ ...cell, value: value ?? undefined });
  const known = new Set(plan.cells.map(({ at }) => at));
  const cells = plan.cells.map((cell) => (values.has(cell.at) ? withValue(cell, values.get(cell.at) ?? null) : cell));
  const added = entries.filter(({ at, value }) => !known.has(at) && value !== null).map(({ at, value }) => withValue({ at, role: 'label' }, value));
  return { ...plan, cells: [...cells, ...added] };
}

/** "$b$4" → "B4"; throws on what is no address. */
function rangeText(address: string): string {
  const { startRow, startColumn, endRow, endColumn } = rangeOf(address);
  const [first, last] = [addressOf({ row: startRow, column: startColumn }), addressOf({ row: endRow, column: endColumn })];
  return first === last ? first : `${first}:${last}`;
}
