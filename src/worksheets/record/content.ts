import type { ReadValue } from '../readSheet';

/** Digits that two programs agree on in what a formula gives. */
const RESULT_DIGITS = 15;

/** Text that would read as something else than text without a mark. */
const LIKE_ANOTHER = /^(?:['{=#]|\s*$|TRUE$|FALSE$|[+-]?(?:\d|\.\d))/;

/**
 * A constant as a record keeps it. Numbers in the shortest decimals that read back as the same double (17 digits at most, as
 * JSON writes them); TRUE and FALSE; an error by its code. Text as it is, with an apostrophe before it if it is blank, begins
 * like a number, or with one of ' { = #, or is TRUE or FALSE, so that it cannot be taken for something else.
 */
export function contentOf(value: ReadValue): string {
  if (value === null) return '';
  if (typeof value === 'number') return numberText(value);
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  if (typeof value === 'object') return value.error;
  return value !== '' && LIKE_ANOTHER.test(value) ? `'${value}` : value;
}

/** What a formula gave, as a record keeps it: as a constant, but numbers to 15 significant digits. */
export function resultOf(value: ReadValue): string {
  return contentOf(typeof value === 'number' && Number.isFinite(value) ? Number(value.toPrecision(RESULT_DIGITS)) : value);
}

/** The value that {@link contentOf} wrote down; an empty text counts as blank. */
export function valueOf(content: string): ReadValue {
  if (content === '') return null;
  if (content.startsWith("'")) return content.slice(1);
  if (content === 'TRUE' || content === 'FALSE') return content === 'TRUE';
  if (content.startsWith('#')) return { error: content };
  return /^-?\d/.test(content) ? Number(content) : content;
}

/** −0 is 0, as a cell shows it. */
function numberText(value: number): string {
  return String(value === 0 ? 0 : value);
}

/**
 * What a formula that spills gave, row by row, in the way of an array constant: cells parted by commas, rows by semicolons,
 * all in braces; text in double quotes, those in it doubled.
 */
export function arrayText(rows: readonly (readonly ReadValue[])[]): string {
  return `{${rows.map((row) => row.map(elementText).join(',')).join(';')}}`;
}

function elementText(value: ReadValue): string {
  if (typeof value === 'string' || value === null) return `"${(value ?? '').replaceAll('"', '""')}"`;
  return resultOf(value);
}

const ELEMENT = /"((?:[^"]|"")*)"|[^,;{}"]+|[,;]/g;

/** The rows that {@link arrayText} wrote down; undefined if the text is of a single value. */
export function rowsOfArray(text: string): ReadValue[][] | undefined {
  if (!text.startsWith('{') || !text.endsWith('}')) return undefined;
  const rows: ReadValue[][] = [[]];
  for (const [token, quoted] of text.slice(1, -1).matchAll(ELEMENT)) {
    if (token === ';') rows.push([]);
    else if (token !== ',') rows[rows.length - 1].push(quoted === undefined ? valueOf(token) : quoted.replaceAll('""', '"'));
  }
  return rows;
}
