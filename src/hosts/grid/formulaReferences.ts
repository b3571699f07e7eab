/** A cell or range that a formula refers to; the sheet's name only if the formula gives one. */
export interface FormulaReference {
  readonly sheet?: string;
  /** Like "B4" or "B4:C9". */
  readonly range: string;
}

const QUOTED_TEXT = /"(?:[^"]|"")*"/g;
const REFERENCE = /(?:(?:'((?:[^']|'')+)'|([\p{L}\p{N}_.]+))!)?(?<![\p{L}\p{N}_.$])(\$?[A-Z]{1,3}\$?[1-9]\d*(?::\$?[A-Z]{1,3}\$?[1-9]\d*)?)(?![\p{L}\p{N}_.(!])/giu;

/** The cells a formula refers to, in the order they stand. Names and table references are not followed. */
export function referencesIn(formula: string): FormulaReference[] {
  return [...formula.replace(QUOTED_TEXT, '""').matchAll(REFERENCE)].map(([, quoted, plain, range]) => {
    const sheet = quoted?.replaceAll("''", "'") ?? plain;
    return { ...(sheet === undefined ? {} : { sheet }), range: range.replaceAll('$', '').toUpperCase() };
  });
}
