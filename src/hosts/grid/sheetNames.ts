import type { IDefinedNamesServiceParam } from '@univerjs/engine-formula';
import type { PlanName } from '../../worksheets/plan';
import { addressOf, rangeOf } from '../address';
import { quoted } from './nameText';

/** What the grid calls the part of a stored workbook that holds its names. */
export const NAMES = 'SHEET_DEFINED_NAME_PLUGIN';

/** The names of a plan as the grid keeps them, for the sheet alone. */
export function definedNames(plan: { readonly name: string; readonly names?: readonly PlanName[] }, sheetId: string): IDefinedNamesServiceParam[] {
  return (plan.names ?? []).map(({ name, range }) => ({
    id: `${sheetId} ${name}`,
    name,
    formulaOrRefString: `${quoted(plan.name)}!${absolute(range)}`,
    localSheetId: sheetId,
  }));
}

/** What a name of the grid stands for, as a range within its sheet; undefined if it is no range. */
export function planName({ name, formulaOrRefString }: IDefinedNamesServiceParam): PlanName | undefined {
  const range = formulaOrRefString.slice(formulaOrRefString.lastIndexOf('!') + 1).replaceAll('$', '');
  return /^[A-Z]+[1-9]\d*(:[A-Z]+[1-9]\d*)?$/i.test(range) ? { name, range } : undefined;
}

/** "A5:B9" → "$A$5:$B$9". */
function absolute(range: string): string {
  const { startRow, startColumn, endRow, endColumn } = rangeOf(range);
  const corner = (row: number, column: number): string => addressOf({ row, column }).replace(/[A-Z]+/, '$$$&$$');
  const first = corner(startRow, startColumn);
  return range.includes(':') ? `${first}:${corner(endRow, endColumn)}` : first;
}
