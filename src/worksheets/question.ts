/** What a form asks before a sheet is planned. The form shows it; the planner reads the answers as they were typed. */
export interface Question {
  readonly id: string;
  readonly label: string;
  /** Unit of the answer, as it stands behind the field; it can follow another answer. */
  readonly unit?: string;
  /** The part of the form it stands in, like "Item" or "Procedure"; questions of one part follow each other. */
  readonly group: string;
  /**
   * "number": one number. "numbers", "words": a list, parted by commas or blanks ("words": by commas). "choice": one of the
   * choices. "choices": any of them, parted by commas. "text": a line of text.
   */
  readonly kind: 'text' | 'number' | 'numbers' | 'words' | 'choice' | 'choices';
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
  /** One sentence on what is expected and why. */
  readonly help: string;
  readonly optional: boolean;
}

/** Answers by the id of the question, as typed. */
export type Answers = Readonly<Record<string, string>>;

/** Something about the answers: "refuse" where the sheet could not work, "warn" where practice varies. */
export interface Problem {
  readonly severity: 'refuse' | 'warn';
  /** The id of the question it is about. */
  readonly question: string;
  readonly message: string;
}
