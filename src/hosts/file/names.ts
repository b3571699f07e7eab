import type { SheetPlan } from '../../worksheets/plan';
import { rangeOf } from '../address';

const SHEET_NAME_LIMIT = 31;
/** A name of a range: Excel takes more letters, but the other hosts read these. */
const RANGE_NAME = /^[A-Z_]\w{0,254}$/i;
/** What Excel reads as a cell, a row or a column: A1, R1C1, R, C2. */
const LIKE_A_CELL = /^(?:[A-Z]{1,3}\d+|R\d*(?:C\d*)?|C\d*)$/i;

/** Throws if Excel would refuse the file for the name of a sheet or of a range: it then offers to repair it. */
export function checkNames(plans: readonly SheetPlan[]): void {
  const sheets = new Set<string>();
  for (const { name, names = [] } of plans) {
    checkSheetName(name);
    claim(sheets, name, `found two sheets named “${name}”; expected a name for each`);
    const ranges = new Set<string>();
    for (const { name: rangeName, range } of names) {
      if (!RANGE_NAME.test(rangeName) || LIKE_A_CELL.test(rangeName)) {
        throw new Error(`${name}: found the name “${rangeName}”; expected letters, digits and underscores, and no cell address`);
      }
      claim(ranges, rangeName, `${name}: found the name “${rangeName}” twice; expected it once`);
      rangeOf(range);
    }
  }
}

function checkSheetName(name: string): void {
  const refuse = (found: string, expected: string): never => {
    throw new Error(`Sheet “${name}”: found ${found}; expected ${expected}`);
  };
  if (name.trim() === '') refuse('no name', `1 to ${SHEET_NAME_LIMIT} letters`);
  if (name.length > SHEET_NAME_LIMIT) refuse(`${name.length} letters`, `${SHEET_NAME_LIMIT} at most`);
  const odd = /[[\]:*?/\\]/.exec(name);
  if (odd) refuse(`"${odd[0]}"`, 'a name without [ ] : * ? / \\');
  if (/^'|'$/.test(name)) refuse('an apostrophe at an end', 'one within the name, or none');
}

/** Names are the same whatever the case of their letters. */
function claim(taken: Set<string>, name: string, message: string): void {
  if (taken.has(name.toLowerCase())) throw new Error(message);
  taken.add(name.toLowerCase());
}
