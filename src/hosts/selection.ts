/** The error a cell holds: its code, and the words that came with it (empty if none did). */
export interface CellError {
  readonly code: string;
  readonly message: string;
}

/** What a host tells of the selected cell. */
export interface SelectedCell {
  /** Address within its sheet, like "B4". */
  readonly address: string;
  /** The formula with its leading "=", or the constant; of the anchor, if the cell shows part of a spilled result. */
  readonly formula: unknown;
  readonly error?: CellError;
}

/** Who listens to a host's selection. */
export interface SelectionListener {
  onCell(cell: SelectedCell): void;
  /** The selection could not be read; the words are for the user. */
  onProblem(words: string): void;
}

/** The part of a host that says which cell is selected. */
export interface SelectionSource {
  /** Tells the listener of the selected cell, now and at every change. Never rejects: a problem goes to the listener. */
  follow(listener: SelectionListener): Promise<void>;
}
