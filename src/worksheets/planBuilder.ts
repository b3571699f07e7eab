import type { CellRole, ChartPlan, Highlight, PlanCell, PlanName, PrintPlan, SheetPlan, Validation } from './plan';

/** What a cell holds: a formula if it is marked as one, else a constant; undefined leaves it empty but styled. */
export type Content = string | number | boolean | Formula | undefined;

/** A formula, kept apart from text: text that starts with "=" stays text. */
export class Formula {
  constructor(readonly text: string) {}
}

/** Marks a formula; the leading "=" is added. */
export function formula(text: string): Formula {
  return new Formula(`=${text}`);
}

/** Address of a cell from column and row, both from 1: (2, 4) is "B4". */
export function address(column: number, row: number): string {
  let letters = '';
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26)) {
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  }
  return `${letters}${row}`;
}

/** Number of a column from its letters, in either case, counted from 1: "B" is 2. */
export function columnNumber(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

/** The same as a reference that stays where it is when a formula is copied: (2, 4) is "$B$4". */
export function fixed(column: number, row: number): string {
  return address(column, row).replace(/^([A-Z]+)/, '$$$1$$');
}

/** Gathers the cells of a sheet. Columns and rows count from 1, as a user sees them. */
export class PlanBuilder {
  private readonly cells = new Map<string, PlanCell>();
  private readonly merges: string[] = [];
  private readonly names: PlanName[] = [];
  private readonly validations: Validation[] = [];
  private readonly highlights: Highlight[] = [];
  private readonly charts: ChartPlan[] = [];

  constructor(private readonly name: string, private readonly columns: readonly number[]) {}

  /** One cell. A later write to the same cell replaces the earlier one. */
  put(column: number, row: number, role: CellRole, content?: Content, format?: string): this {
    const at = address(column, row);
    const held = content instanceof Formula ? { formula: content.text } : content === undefined ? {} : { value: content };
    this.cells.set(at, { at, role, ...held, ...(format === undefined ? {} : { format }) });
    return this;
  }

  /** One cell by its address. */
  fill(at: string, role: CellRole, content: Content, format?: string): this {
    const [, letters, row] = /^([A-Z]+)(\d+)$/.exec(at) as RegExpExecArray;
    return this.put(columnNumber(letters), Number(row), role, content, format);
  }

  /** A run of cells to the right. */
  across(column: number, row: number, role: CellRole, contents: readonly Content[], format?: string): this {
    contents.forEach((content, i) => this.put(column + i, row, role, content, format));
    return this;
  }

  /** A run of cells to the right, and blank ones of the same look as far as the last column. */
  acrossTo(last: number, column: number, row: number, role: CellRole, contents: readonly Content[], format?: string): this {
    const rest = Array.from({ length: last - column + 1 - contents.length }, () => undefined);
    return this.across(column, row, role, [...contents, ...rest], format);
  }

  /** A run of cells downwards. */
  down(column: number, row: number, role: CellRole, contents: readonly Content[], format?: string): this {
    contents.forEach((content, i) => this.put(column, row + i, role, content, format));
    return this;
  }

  /** A formula that spills over a block of the given size; the first row takes another role if it is a header. */
  spill(column: number, row: number, columns: number, rows: number, content: Formula, format?: string, header = false): this {
    for (let i = 0; i < rows; i += 1) {
      const isHeader = header && i === 0;
      for (let j = 0; j < columns; j += 1) {
        this.put(column + j, row + i, isHeader ? 'header' : 'result', i + j === 0 ? content : undefined, isHeader ? undefined : format);
      }
    }
    const source = this.cells.get(address(column, row)) as PlanCell;
    this.cells.set(source.at, { ...source, spill: { rows, columns } });
    return this;
  }

  /** Gives cells of a column another role or format, and leaves what they hold. */
  restyle(column: number, row: number, rows: number, role: CellRole, format?: string): this {
    for (let i = 0; i < rows; i += 1) {
      const at = address(column, row + i);
      this.cells.set(at, { ...this.cells.get(at), at, role, format });
    }
    return this;
  }

  /** Gives the cells of a role in a row room for so many lines, over which what they hold wraps. */
  roomy(row: number, lines: number, role: CellRole = 'input'): this {
    for (const [at, cell] of this.cells) {
      if (cell.role === role && Number(/\d+$/.exec(at)?.[0]) === row) this.cells.set(at, { ...cell, lines });
    }
    return this;
  }

  /** One cell that shows across several columns. */
  wide(column: number, row: number, columns: number, role: CellRole, content?: Content, format?: string): this {
    this.merges.push(`${address(column, row)}:${address(column + columns - 1, row)}`);
    return this.put(column, row, role, content, format);
  }

  /** Says what a range is. */
  called(name: string, range: string): this {
    this.names.push({ name, range });
    return this;
  }

  validate(validation: Validation): this {
    this.validations.push(validation);
    return this;
  }

  highlight(highlight: Highlight): this {
    this.highlights.push(highlight);
    return this;
  }

  chart(chart: ChartPlan): this {
    this.charts.push(chart);
    return this;
  }

  plan(frozenRows = 0, { locked, print }: { readonly locked?: boolean; readonly print?: PrintPlan } = {}): SheetPlan {
    const { names, validations, highlights, charts } = this;
    return {
      name: this.name, columns: this.columns, cells: [...this.cells.values()], merges: this.merges, frozenRows,
      ...(names.length > 0 ? { names } : {}),
      ...(validations.length > 0 ? { validations } : {}),
      ...(highlights.length > 0 ? { highlights } : {}),
      ...(charts.length > 0 ? { charts } : {}),
      ...(locked ? { locked } : {}),
      ...(print ? { print } : {}),
    };
  }
}
