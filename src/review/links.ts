import type { ReadSheet, ReadValue } from '../worksheets/readSheet';
import { sameValue } from '../worksheets/record/sameContent';
import { found, held } from './finding';
import { ReviewedSheet } from './reviewedSheet';
import type { ReviewFinding } from './reviewFinding';

const REFERENCE = String.raw`(?:(?:'((?:[^']|'')+)'|([A-Za-z_][\w.]*))!)?\$?([A-Z]{1,3})\$?(\d{1,7})`;
const PLAIN = new RegExp(`^=${REFERENCE}$`);
const OR_EMPTY = new RegExp(`^=IF\\(${REFERENCE}="","",${REFERENCE}\\)$`);

/** Cells that only show another cell, and hold something else than that. */
export function links(sheet: ReviewedSheet, byName: ReadonlyMap<string, ReviewedSheet>): ReviewFinding[] {
  return sheet.read.cells.flatMap((cell): ReviewFinding[] => {
    const target = cell.formula === undefined ? undefined : targetOf(cell.formula, sheet, byName);
    if (!target) return [];
    const there = target.sheet.at(target.at).value;
    const should: ReadValue = there === null && !target.orEmpty ? 0 : there;
    if (sameValue(should, blank(cell.value))) return [];
    return [found(sheet, cell, 'result', `${cell.at} holds ${held(cell.value, cell.format)}, and ${target.sheet === sheet ? '' : `${target.sheet.name}!`}${target.at}, which it refers to, ${held(there, cell.format)}; expected the same`)];
  });
}

function blank(value: ReadValue): ReadValue {
  return typeof value === 'string' && value.trim() === '' ? null : value;
}

interface Target {
  readonly sheet: ReviewedSheet;
  readonly at: string;
  readonly orEmpty: boolean;
}

/** The cell that a formula shows, if it does nothing else. */
function targetOf(formula: string, own: ReviewedSheet, byName: ReadonlyMap<string, ReviewedSheet>): Target | undefined {
  const plain = PLAIN.exec(formula);
  const guarded = plain ? null : OR_EMPTY.exec(formula);
  const parts = plain?.slice(1, 5) ?? guarded?.slice(1, 5);
  if (!parts || (guarded && parts.some((part, i) => part !== guarded.slice(5, 9)[i]))) return undefined;
  const [quoted, bare, letters, digits] = parts;
  const name = (quoted?.replaceAll("''", "'") ?? bare)?.toLowerCase();
  const sheet = name === undefined ? own : byName.get(name);
  return sheet && { sheet, at: `${letters}${digits}`, orEmpty: guarded !== null };
}

/** Sheets by their names, whatever the case. */
export function sheetsByName(sheets: readonly ReadSheet[]): ReadonlyMap<string, ReviewedSheet> {
  return new Map(sheets.map((sheet) => [sheet.name.toLowerCase(), new ReviewedSheet(sheet)]));
}
