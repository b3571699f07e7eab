/** Something about a filled-in sheet that a person should look at. */
export interface Finding {
  /** "wrong": the result cannot stand. "odd": unusual, so look again. "missing": not there yet. */
  readonly severity: 'wrong' | 'odd' | 'missing';
  /** Names the cell, what was found and what was expected. */
  readonly message: string;
  /** The cell to jump to, like "C21". */
  readonly at: string;
}
