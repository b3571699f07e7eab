/**
 * A worksheet as plain data: what to write, where, and what role each cell plays. Hosts turn it into a sheet.
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
}

/** What a cell is for; the host decides how each role looks. */
export type CellRole =
  | 'title' | 'subtitle' | 'heading' | 'text' | 'note' | 'caution'
  | 'header' | 'label' | 'input' | 'result' | 'reference' | 'formula';

/** A cell with neither value nor formula only takes its look: room for what spills into it, or for the user. */
export interface PlanCell {
  /** Address within the sheet, like "B4". */
  readonly at: string;
  readonly role: CellRole;
  /** A constant; text that starts with "=" stays text. */
  readonly value?: string | number | boolean;
  /** A formula, with its leading "=". A formula that spills needs free cells below and right. */
  readonly formula?: string;
  /** Number format, like "0.000 %"; general if omitted. */
  readonly format?: string;
}
