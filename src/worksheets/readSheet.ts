/** What a cell holds: null if blank. */
export type ReadValue = number | string | boolean | { readonly error: string } | null;

/** A cell that holds something, as it was read back from a workbook. */
export interface ReadCell {
  /** Address within the sheet, like "B4". */
  readonly at: string;
  /** The constant, or what the formula gives. */
  readonly value: ReadValue;
  /** The formula, only in the cell it was typed into. */
  readonly formula?: string;
  readonly format?: string;
}

/** A sheet as it was read back, from whichever program: what its names say is all that is known of its layout. */
export interface ReadSheet {
  readonly name: string;
  readonly cells: readonly ReadCell[];
  /** Names of this sheet alone. */
  readonly names: readonly { readonly name: string; readonly range: string }[];
}
