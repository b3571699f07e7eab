import type { Entry, PlanName, SheetPlan } from '../worksheets/plan';

/** What a cell holds: null if blank. */
export type CellValue = number | string | boolean | { readonly error: string } | null;

/** A cell that holds something, as a host reads it back. */
export interface CellContent {
  /** Address within the sheet, like "B4". */
  readonly at: string;
  /** The constant, or what the formula gives; of a cell that a formula spills into, its share. */
  readonly value: CellValue;
  /** The formula as typed, with its leading "="; only in the cell it was typed into. */
  readonly formula?: string;
  /** Number format, if not general. */
  readonly format?: string;
}

/** A sheet as a host reads it back. */
export interface SheetContent {
  readonly name: string;
  /** Row by row, from left to right; blank cells are left out. */
  readonly cells: readonly CellContent[];
  /** Ranges shown as one cell, like "A1:H1". */
  readonly merges: readonly string[];
  /** Names of this sheet alone. */
  readonly names: readonly PlanName[];
}

/** A sheet in the list of a workbook. */
export interface SheetEntry {
  readonly name: string;
  /** True if no cell holds anything. */
  readonly empty: boolean;
}

/** A sheet of that name holds something, and nothing was said of replacing it. */
export class SheetTaken extends Error {
  constructor(readonly sheet: string) {
    super(`The sheet “${sheet}” already holds something.`);
    this.name = 'SheetTaken';
  }
}

/** A workbook that sheets are planned for, whichever program holds it. What fails rejects with words for the user, and leaves the workbook as it was. */
export interface SheetHost {
  /** The sheets in their order. */
  sheets(): Promise<readonly SheetEntry[]>;
  /**
   * Writes a plan as a sheet of its own, last in the workbook, and shows it. It takes the place of an empty sheet of that
   * name, and of one with content only if `replace` is true.
   * @throws SheetTaken
   */
  write(plan: SheetPlan, options?: { readonly replace?: boolean }): Promise<void>;
  read(sheet: string): Promise<SheetContent>;
  remove(sheet: string): Promise<void>;
  /**
   * Puts constants into cells of a sheet, null to empty them: all of them or none, and one step for undo. Text stays text. Cells
   * that a formula stands in or spills into, and locked ones, are refused by their address.
   */
  fill(sheet: string, entries: readonly Entry[]): Promise<void>;
  /** The whole workbook as the bytes of a file (.xlsx), with what its formulas give. */
  save(): Promise<Uint8Array>;
  /** Shows a sheet and selects a cell or range of it. */
  select(sheet: string, address: string): Promise<void>;
  /** The sheet that is shown. */
  active(): Promise<string>;
  /** Told when values, sheets, or the sheet that is shown may have changed; calls come in bursts. */
  onChange(listener: () => void): void;
}
