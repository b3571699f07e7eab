/** Quoted text and quoted sheet names are passed over; a name may have its sheet before it, and is no function. */
const PART = /"(?:[^"]|"")*"|(?:('(?:[^']|'')+'|[\p{L}\p{N}_.]+)!)?(?<![\p{L}\p{N}_.$])([\p{L}_][\p{L}\p{N}_.]*)(?![\p{L}\p{N}_.]*[(!])(?![\p{L}\p{N}_.])|'(?:[^']|'')*'/gu;

/** The formula with ranges in place of names. `rangeOf` knows what a name stands for, with the sheet if the formula gives one. */
export function withRanges(formula: string, rangeOf: (name: string, sheet?: string) => string | undefined): string {
  return formula.replace(PART, (part: string, sheet: string | undefined, name: string | undefined) =>
    (name === undefined ? part : rangeOf(name, sheet === undefined ? undefined : unquoted(sheet)) ?? part));
}

/** `'Bench 1''s run'` → `Bench 1's run`. */
export function unquoted(sheet: string): string {
  return sheet.startsWith("'") ? sheet.slice(1, -1).replaceAll("''", "'") : sheet;
}

/** The name of a sheet as a formula writes it. */
export function quoted(sheet: string): string {
  return `'${sheet.replaceAll("'", "''")}'`;
}
