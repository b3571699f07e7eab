import type { Cells } from './cells';
import { CellFault } from './faults';
import { describe, isBlank, named, placeIn } from './readCell';

/**
 * Bytes written in hexadecimal, in one cell or in several read row by row. Blanks and line breaks between digits, small
 * letters and a leading "0x" are allowed. Errors name the cell and the character: a number in place of text, a character
 * that is no digit, no digit at all, half a byte.
 */
export function readHex(cells: Cells, argument: string): Uint8Array {
  const digits = cells.flatMap((line, row) => line.map((_, column) => digitsAt(cells, row, column, argument))).join('');
  if (digits === '') throw new CellFault('#VALUE!', `${argument}: found no hex digit; expected two for each byte`);
  if (digits.length % 2 === 1) {
    throw new CellFault('#VALUE!', `${argument}: found ${digits.length} digits, so that digit ${digits.length} stands alone; expected two for each byte`);
  }
  return Uint8Array.from({ length: digits.length / 2 }, (_, i) => parseInt(digits.slice(2 * i, 2 * i + 2), 16));
}

/** Bytes as hex text in capitals, two digits each. */
export function hexText(bytes: Uint8Array): string {
  return [...bytes].map((byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join('');
}

function digitsAt(cells: Cells, row: number, column: number, argument: string): string {
  const cell = cells[row][column];
  if (isBlank(cell)) return '';
  const place = named(argument, placeIn(cells, row, column));
  if (typeof cell !== 'string') {
    throw new CellFault('#VALUE!', `${place}: found ${describe(cell)}; expected hex digits as text (an apostrophe in front keeps a cell of digits from becoming a number)`);
  }
  // Prefixes become as many blanks, so that positions in messages are those of the cell.
  const text = cell.replace(/(^|\s)0x/gi, (match) => ' '.repeat(match.length));
  const wrong = text.search(/[^0-9a-f\s]/i);
  if (wrong >= 0) {
    throw new CellFault('#VALUE!', `${place}: found "${String.fromCodePoint(text.codePointAt(wrong)!)}" as character ${wrong + 1}; expected a hex digit, 0 to 9 or A to F`);
  }
  return text.replace(/\s/g, '');
}
