/** Text in quotes, a quoted sheet name or a bracketed table reference: a name in there is no call. */
const NOT_CODE = /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^\]]*\]/g;

/** A call as typed (`PROVE.FIT(`) or as a saved workbook stores it (`_xldudf_PROVE_FIT(`, dots as underscores). */
const CALL = /(?<![A-Z0-9_.\\])(?:_xldudf_PROVE_|(?:_xlfn\.)?PROVE\.)([A-Z][A-Z0-9._]*)\s*\(/gi;

/**
 * The ids of the PROVE functions that a cell's formula calls, in the order they stand, each once.
 * Empty for a constant, for a formula without one, and for names inside quoted text.
 */
export function cellFunctionsIn(formula: unknown): string[] {
  if (typeof formula !== 'string' || !formula.trimStart().startsWith('=')) return [];
  const code = formula.replace(NOT_CODE, (quoted) => quoted[0] + quoted[quoted.length - 1]);
  return [...new Set([...code.matchAll(CALL)].map((call) => call[1].toUpperCase()))];
}
