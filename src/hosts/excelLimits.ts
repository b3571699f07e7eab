/** What Excel refuses, said before anything is written. Each function names the place, what was found, and what was expected. */

const MESSAGE_LIMIT = 225;
const LIST_LIMIT = 255;
const NAME_LIMIT = 31;
const FOOT_LIMIT = 255;

/** Letters that a cell holds at most. */
export const TEXT_LIMIT = 32_767;

/** The largest number that Excel takes in the rule of a validation, for a side without a limit. */
export const BOUNDLESS = 9.99e307;

/** The message of a data validation, if Excel takes it. */
export function acceptedMessage(place: string, message: string): string {
  if (message.length > MESSAGE_LIMIT) throw new Error(`${place}: found a message of ${message.length} letters; Excel takes ${MESSAGE_LIMIT} at most`);
  return message;
}

/** A list of words to choose from as Excel keeps it, parted by commas. */
export function acceptedList(place: string, words: readonly string[]): string {
  const odd = words.find((word) => /[,"]/.test(word));
  if (odd !== undefined) throw new Error(`${place}: found "${odd}" in a list; words without commas and quotes were expected`);
  const list = words.join(',');
  if (list.length > LIST_LIMIT) throw new Error(`${place}: found a list of ${list.length} letters; Excel takes ${LIST_LIMIT} at most`);
  return list;
}

/** The name of a sheet, if Excel takes it. */
export function acceptedSheetName(name: string): string {
  const found = `The name of the sheet: found “${name}”; expected `;
  if (name.trim() === '' || name.length > NAME_LIMIT) throw new Error(`${found}1 to ${NAME_LIMIT} letters`);
  const odd = /[[\]:*?/\\]/.exec(name);
  if (odd) throw new Error(`${found}a name without ${odd[0]}`);
  if (/^'|'$/.test(name)) throw new Error(`${found}a name without an apostrophe at its ends`);
  if (/^history$/i.test(name)) throw new Error(`${found}another, since Excel keeps this name for itself`);
  return name;
}

/** The left and the right side of the foot of a printed page, in the marks of Excel: what the plan says, or the sheet's name. */
export function acceptedFoot(place: string, foot?: string): { readonly left: string; readonly right: string } {
  const left = foot === undefined ? '&A' : foot.replaceAll('&', '&&');
  const right = foot === undefined ? '&P / &N' : 'page &P of &N';
  const { length } = `&L${left}&R${right}`;
  if (length > FOOT_LIMIT) throw new Error(`${place}: found a foot of the page of ${length} letters; Excel takes ${FOOT_LIMIT} at most, page numbers included`);
  return { left, right };
}
