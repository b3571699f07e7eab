/** The longest name a sheet can have, in Excel as in the grid. */
const LONGEST = 31;

/** What is wrong with a name for a new sheet, or nothing. `taken` are the names that sheets have already. */
export function sheetNameProblem(name: string, taken: readonly string[]): string | undefined {
  if (name.trim() === '') return 'The sheet needs a name.';
  if (name.length > LONGEST) return `The name has ${name.length} characters; a sheet's name has at most ${LONGEST}.`;
  const forbidden = /[[\]:*?/\\]/.exec(name)?.[0];
  if (forbidden) return `The name holds “${forbidden}”; a sheet's name holds none of [ ] : * ? / \\.`;
  if (name.startsWith("'") || name.endsWith("'")) return "A sheet's name neither begins nor ends with an apostrophe.";
  if (isTaken(name, taken)) return `There is a sheet “${name}” already.`;
  return undefined;
}

/** A free name made of this one and a number: "Run 2". */
export function freeName(name: string, taken: readonly string[]): string {
  for (let number = 2; ; number += 1) {
    const tail = ` ${number}`;
    const tried = name.slice(0, LONGEST - tail.length).trimEnd() + tail;
    if (!isTaken(tried, taken)) return tried;
  }
}

function isTaken(name: string, taken: readonly string[]): boolean {
  return taken.some((other) => other.toLowerCase() === name.trim().toLowerCase());
}
