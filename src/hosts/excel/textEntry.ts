/** The longest text with figures that Excel may still read as a date. */
const LONGEST_DATE = 40;

/**
 * A text as it is typed into a cell so that it stays text: with an apostrophe before it, which Excel keeps out of the value,
 * wherever Excel could read a formula, number, date, truth value or error. Plain words go without, since the apostrophe
 * shows in the formula bar.
 */
export function textEntry(text: string): string {
  return isSurelyText(text) ? text : `'${text}`;
}

function isSurelyText(text: string): boolean {
  if (!/^\p{L}/u.test(text) || /^(true|false)$/i.test(text.trim())) return false;
  return !/\d/.test(text) || text.length > LONGEST_DATE;
}
