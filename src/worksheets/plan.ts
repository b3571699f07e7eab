/**
 * A worksheet as plain data: what to write, where, and what part each cell plays. Hosts turn it into a sheet.
 * Nothing here knows a host; a role is turned into colours and fonts by the host.
 */
export interface SheetPlan {
  readonly name: string;
  /** Column widths in characters, from column A. */
  readonly columns: readonly number[];
  readonly cells: readonly PlanCell[];
  /** Ranges shown as one cell, like "A1:H1". */
  readonly merges?: readonly string[];
  /** Rows that stay in view at the top. */
  readonly frozenRows?: number;
  /** Names that say what a range is, for this sheet alone. */
  readonly names?: readonly PlanName[];
  /** What may be typed into ranges. */
  readonly validations?: readonly Validation[];
  /** Looks that depend on a condition. */
  readonly highlights?: readonly Highlight[];
  readonly charts?: readonly ChartPlan[];
  /** True: every cell but the inputs is locked, without a password. */
  readonly locked?: boolean;
  readonly print?: PrintPlan;
}

/** What a cell is for; the host decides how each role looks. */
export type CellRole =
  | 'title' | 'subtitle' | 'heading' | 'text' | 'note' | 'caution'
  | 'header' | 'label' | 'input' | 'result' | 'reference' | 'formula'
  /** Words right of a figure, like its unit. */
  | 'aside'
  /** A result in a word: within, outside, agrees. */
  | 'verdict'
  /** What a certificate states: the name of a statement, its words or single figure, and figures of a table. */
  | 'field' | 'stated' | 'figure';

/** A cell with neither value nor formula only takes its look: room for what spills into it, or for the user. */
export interface PlanCell {
  /** Address within the sheet, like "B4". */
  readonly at: string;
  readonly role: CellRole;
  /** A constant; text that starts with "=" stays text. */
  readonly value?: string | number | boolean;
  /** A formula, with its leading "=". A formula that spills needs free cells below and right. */
  readonly formula?: string;
  /** Rows and columns that the formula spills over, itself included; one cell if omitted. */
  readonly spill?: { readonly rows: number; readonly columns: number };
  /** Number format, like "0.000 %"; general if omitted. */
  readonly format?: string;
  /** Room for so many lines, over which what is typed wraps; one line, which does not, if omitted. */
  readonly lines?: number;
}

/** A defined name of the sheet. */
export interface PlanName {
  /** Letters, digits and underscores, no cell address. */
  readonly name: string;
  /** Range within the sheet, like "B12:D22". */
  readonly range: string;
}

/** What may be typed into a range; anything else is refused with the message. Blank is always allowed. */
export interface Validation {
  readonly range: string;
  readonly rule:
    | { readonly kind: 'number'; readonly least?: number; readonly greatest?: number }
    | { readonly kind: 'whole'; readonly least: number; readonly greatest: number }
    | { readonly kind: 'date' }
    | { readonly kind: 'list'; readonly words: readonly string[] };
  /** What is expected, as a sentence. */
  readonly message: string;
}

/** A look for cells of a range where a formula is true; relative references are from the range's first cell. */
export interface Highlight {
  readonly range: string;
  readonly formula: string;
  readonly look: 'pass' | 'fail' | 'doubt';
}

/** A plot of columns against a column. */
export interface ChartPlan {
  readonly title: string;
  /** Range that the chart covers, like "A40:H58". */
  readonly over: string;
  readonly x: string;
  readonly y: string;
  readonly series: readonly ChartSeries[];
}

/** One line or set of points of a chart; the ranges are of equal length. */
export interface ChartSeries {
  readonly name: string;
  readonly x: string;
  readonly y: string;
  readonly drawn: 'points' | 'line' | 'both' | 'limit';
}

/** How the sheet prints: always one page wide. */
export interface PrintPlan {
  readonly area: string;
  readonly landscape: boolean;
  /** First and last row repeated on every page, if any. */
  readonly repeatRows?: readonly [first: number, last: number];
  /** What stands at the foot of every page, left of "page x of y"; the name of the sheet and "x / y" if omitted. */
  readonly foot?: string;
}

/** What a cell of a sheet that stands already is to hold; null empties it. */
export interface Entry {
  /** Address within the sheet, like "B4". */
  readonly at: string;
  readonly value: string | number | boolean | null;
}
