import { type Format, Formula, Workbook, type Worksheet } from 'wasm-xlsxwriter';
import type { PlanCell, SheetPlan } from '../../worksheets/plan';
import { addressOf, isInside, placeOf, rangeOf } from '../address';
import { checkNames } from '../planNames';
import { columnPixels, headLook, ROW_HEIGHT, rowHeights } from '../sheetLayout';
import type { CellValue } from '../sheetHost';
import { baseFormat, cellFormat } from './cellFormats';
import { cachedText, knownError } from './cellValue';
import { addCharts } from './charts';
import { setUpPages } from './pageSetup';
import { needsArray, toStored } from './storedFormula';
import { completed, type SpilledError } from './workbookParts';

/** A sheet of a workbook file: its plan, and what its formulas give. */
export interface FileSheet {
  readonly plan: SheetPlan;
  /** The computed value of a cell that holds a formula or that a formula spills into, by its address. */
  readonly values: (at: string) => CellValue;
  /** True for the sheet that is shown when the file is opened; without one it is the first. */
  readonly shown?: boolean;
  /** Cell or range that is selected then; A1 if omitted. */
  readonly selection?: string;
  /** True if the sheet has no tab. */
  readonly hidden?: boolean;
}

/** Writes a workbook file; throws, naming the cell, on what it cannot hold. */
export type WriteFile = (sheets: readonly FileSheet[]) => Promise<Uint8Array>;

/** Excel scales column widths by the font's figures; this is its usual width for the base font. */
const USUAL_COLUMN = 64;

/**
 * A workbook file (.xlsx) with a sheet a plan. Formulas are stored as Excel stores them and carry their values, which a
 * program shows until it computes them itself.
 * Throws, naming the cell, on a formula or a value that the file cannot hold; then there is no file.
 */
export async function writeWorkbook(sheets: readonly FileSheet[]): Promise<Uint8Array> {
  checkNames(sheets.map(({ plan }) => plan));
  const workbook = new Workbook();
  workbook.setDefaultFormat(baseFormat(), ROW_HEIGHT, USUAL_COLUMN);
  const additions = sheets.map((sheet) => ({ ...sheet, spilledErrors: inWords(sheet.plan.name, () => addSheet(workbook, sheet)) }));
  return completed(inWords('the workbook', () => workbook.saveToBufferSync()), additions);
}

/** Gives the errors among the spilled values, which the library cannot write. */
function addSheet(workbook: Workbook, { plan, values, shown = false, hidden = false }: FileSheet): readonly SpilledError[] {
  const sheet = workbook.addWorksheet();
  sheet.setName(plan.name);
  if (shown) sheet.setActive(true);
  if (hidden) sheet.setHidden(true);
  setUp(sheet, plan);
  setUpPages(sheet, plan);
  const spilledErrors = new CellWriter(sheet, plan, values).write();
  addCharts(sheet, plan);
  for (const { name, range } of plan.names ?? []) {
    workbook.defineName(`${quoted(plan.name)}!${name}`, `=${quoted(plan.name)}!${absolute(range)}`);
  }
  return spilledErrors;
}

/** What the library throws is no Error, and names a limit of the file only by a code. */
function inWords<T>(place: string, write: () => T): T {
  try {
    return write();
  } catch (error) {
    if (error instanceof Error) throw error;
    const { message = error } = error as { message?: unknown };
    throw new Error(`${place}: a workbook file cannot hold this: ${String(message)}`, { cause: error });
  }
}

/** Widths, heights, what stays in view, and what is locked. */
function setUp(sheet: Worksheet, plan: SheetPlan): void {
  plan.columns.forEach((characters, column) => sheet.setColumnWidthPixels(column, columnPixels(characters)));
  for (const [row, height] of rowHeights(plan)) sheet.setRowHeightPixels(row, height);
  if (plan.frozenRows) sheet.setFreezePanes(plan.frozenRows, 0);
  if (plan.locked) sheet.protect();
}

/** Writes the cells of one sheet. */
class CellWriter {
  private readonly cells: ReadonlyMap<string, PlanCell>;
  private readonly merges;
  private readonly heights: ReadonlyMap<number, number>;
  private readonly spilledErrors: SpilledError[] = [];

  constructor(private readonly sheet: Worksheet, private readonly plan: SheetPlan, private readonly values: (at: string) => CellValue) {
    this.cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
    this.heights = rowHeights(plan);
    this.merges = (plan.merges ?? []).map((range) => ({ range, ...rangeOf(range) }));
  }

  /** Gives the errors among the spilled values, which the library cannot write. */
  write(): readonly SpilledError[] {
    for (const { startRow, startColumn, endRow, endColumn } of this.merges) {
      const first = this.cells.get(addressOf({ row: startRow, column: startColumn }));
      if (startRow === endRow && startColumn === endColumn) continue;
      this.sheet.mergeRange(startRow, startColumn, endRow, endColumn, '', first ? this.formatOf(first) : baseFormat());
    }
    for (const cell of this.plan.cells) if (cell.formula === undefined) this.constant(cell);
    // A formula blanks what it spills over, so its values come after it.
    for (const cell of this.plan.cells) if (cell.formula !== undefined) this.formula(cell, cell.formula);
    return this.spilledErrors;
  }

  private constant(cell: PlanCell): void {
    const { row, column } = placeOf(cell.at);
    const format = this.formatOf(cell);
    if (typeof cell.value === 'number') this.sheet.writeNumberWithFormat(row, column, cell.value, format);
    else if (typeof cell.value === 'boolean') this.sheet.writeBooleanWithFormat(row, column, cell.value, format);
    else if (cell.value !== undefined && cell.value !== '') this.sheet.writeStringWithFormat(row, column, cell.value, format);
    else this.sheet.writeBlank(row, column, format);
  }

  private formula(cell: PlanCell, typed: string): void {
    const place = this.place(cell.at);
    const { row, column } = placeOf(cell.at);
    const { rows, columns } = cell.spill ?? { rows: 1, columns: 1 };
    const format = this.formatOf(cell);
    const formula = new Formula(stored(typed, place)).setResult(cachedText(this.values(cell.at), place));
    if (!cell.spill && !needsArray(typed, this.plan)) {
      this.sheet.writeFormulaWithFormat(row, column, formula, format);
      return;
    }
    const merged = this.merges.find((range) => isInside({ row, column }, range));
    if (merged) throw new Error(`${place}: found ${typed} within ${merged.range}; Excel takes no array in merged cells`);
    this.sheet.writeDynamicArrayFormulaWithFormat(row, column, row + rows - 1, column + columns - 1, formula, format);
    for (let down = 0; down < rows; down += 1) {
      for (let right = 0; right < columns; right += 1) {
        if (down + right > 0) this.spilled(cell, addressOf({ row: row + down, column: column + right }));
      }
    }
  }

  private spilled(source: PlanCell, at: string): void {
    const { row, column } = placeOf(at);
    const format = this.formatOf(this.cells.get(at) ?? source);
    const value = this.values(at);
    if (value === null || value === '') this.sheet.writeBlank(row, column, format);
    else if (typeof value === 'number') this.sheet.writeNumberWithFormat(row, column, value, format);
    else if (typeof value === 'boolean') this.sheet.writeBooleanWithFormat(row, column, value, format);
    else if (typeof value === 'string') this.sheet.writeStringWithFormat(row, column, value, format);
    else {
      this.sheet.writeNumberWithFormat(row, column, 0, format);
      this.spilledErrors.push({ at, code: knownError(value.error, this.place(at)) });
    }
  }

  private formatOf(cell: PlanCell): Format {
    const height = this.heights.get(placeOf(cell.at).row) ?? ROW_HEIGHT;
    return cellFormat(cell, { head: headLook(cell, this.cells), tall: height > ROW_HEIGHT });
  }

  private place(at: string): string {
    return `${quoted(this.plan.name)}!${at}`;
  }
}

function stored(formula: string, place: string): string {
  try {
    return `=${toStored(formula).replace(/^=/, '')}`;
  } catch (error) {
    throw new Error(`${place}: ${(error as Error).message}`, { cause: error });
  }
}

function quoted(sheet: string): string {
  return `'${sheet.replaceAll("'", "''")}'`;
}

/** "B12:D22" → "$B$12:$D$22". */
function absolute(range: string): string {
  return range.replace(/\$?([A-Z]+)\$?(\d+)/g, '$$$1$$$2');
}
