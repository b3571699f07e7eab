/** What a review found, and of which kind. */
export interface ReviewFinding {
  readonly severity: 'wrong' | 'missing' | 'odd';
  readonly kind: FindingKind;
  /** The sheet and the cell it is about. */
  readonly sheet: string;
  readonly at: string;
  /** What was found and what was expected, as a sentence without a full stop; it names the cell. */
  readonly message: string;
}

export type FindingKind =
  /** The independent path gives another result than the sheet. */
  | 'result'
  /** A plain formula beside a result disagrees with it. */
  | 'plain check'
  /** A constant stands where a formula belongs, or a formula differs from the one signed. */
  | 'overwritten'
  /** A limit, tolerance or requirement differs from the one signed, or is wider than the template or the job asks. */
  | 'limit'
  /** A reading differs from the one signed. */
  | 'reading'
  /** Another cell differs from what was signed. */
  | 'changed'
  /** A standard was overdue, or used outside of its range. */
  | 'standard'
  /** What a cell shows is within a limit that its value is beyond. */
  | 'rounding'
  /** The record or its fingerprint does not fit together. */
  | 'record'
  /** What the check of a single sheet finds. */
  | 'sheet';

/** A review: what was looked at, and what was found. */
export interface Review {
  readonly findings: readonly ReviewFinding[];
  /** Results recomputed by the independent path, and how many of them agree. */
  readonly recomputed: number;
  readonly agreeing: number;
  /** Names of the sheets looked at. */
  readonly sheets: readonly string[];
  /** Whether a record of a signature was there, and if so whether everything is as signed. */
  readonly record: 'none' | 'as signed' | 'differs';
  /** Fingerprint that the record states, hexadecimal. */
  readonly fingerprint?: string;
}
