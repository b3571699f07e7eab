/** A cell as it was when the record was made. */
export interface RecordLine {
  readonly sheet: string;
  readonly at: string;
  /**
   * "reading": a constant where readings are typed. "limit": a constant that results are judged by. "entry": any other constant.
   * "formula": a formula; cells that it spills into have no line.
   */
  readonly part: 'reading' | 'limit' | 'entry' | 'formula';
  /** The constant, numbers to 17 significant digits, or the formula with its leading "=". */
  readonly content: string;
  /** What the formula gave, numbers to 15 significant digits; "" for a constant. */
  readonly value: string;
}

/** A record as its sheet holds it. */
export interface SignedRecord {
  /** Name of the sheet. */
  readonly sheet: string;
  readonly lines: readonly RecordLine[];
  /** SHA-256, hexadecimal, as the sheet states them: of the readings, of the results (formulas and what they gave), of everything. */
  readonly readings: string;
  readonly results: string;
  readonly everything: string;
  readonly signedBy: string;
  /** Date, as a spreadsheet counts days. */
  readonly signedOn: number | undefined;
}
