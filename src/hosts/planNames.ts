import type { SheetPlan } from '../worksheets/plan';
import { rangeOf } from './address';
import { acceptedSheetName } from './excelLimits';

/** A name of a range: Excel takes more letters, but the other hosts read these. */
const RANGE_NAME = /^[A-Z_]\w{0,254}$/i;
/** What Excel reads as a cell, a row or a column: A1, R1C1, R, C2. */
const LIKE_A_CELL = /^(?:[A-Z]{1,3}\d+|R\d*(?:C\d*)?|C\d*)$/i;

/** Throws if Excel would refuse the file for the name of a sheet or of a range: it then offers to repair it. */
export function checkNames(plans: readonly SheetPlan[]): void {
  const sheets = new Set<string>();
  for (const { name, names = [] } of plans) {
    claim(sheets, acceptedSheetName(name), `found two sheets named “${name}”; expected a name for each`);
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

/** Names are the same whatever the case of their letters. */
function claim(taken: Set<string>, name: string, message: string): void {
  if (taken.has(name.toLowerCase())) throw new Error(message);
  taken.add(name.toLowerCase());
}
