import { heldBy, linkTo } from '../comparison/links';
import { formula, type Formula } from '../planBuilder';

/** A formula that shows what a cell of another sheet holds, and nothing while that is empty. */
export function shownFrom(sheet: string, at: string): Formula {
  return formula(heldBy(linkTo(sheet, at)));
}

/** A formula that joins what cells of another sheet hold, by a comma and a blank; those that are empty are left out. */
export function joinedFrom(sheet: string, ats: readonly string[]): Formula {
  const [first, ...rest] = ats.map((at) => linkTo(sheet, at));
  return formula([heldBy(first), ...rest.map((cell) => `IF(${cell}="","",", "&${cell})`)].join('&'));
}
