import type { CellError } from '../hosts/selection';
import { element } from './dom';

/** What a code means, for errors that come without words. */
const MEANINGS: Readonly<Record<string, string>> = {
  '#VALUE!': 'Something in the input is not what the formula expects.',
  '#N/A': 'No answer exists for this input, or a value is missing.',
  '#DIV/0!': 'The formula divides by zero or by an empty cell.',
  '#NUM!': 'A number is out of the range that the formula can use.',
  '#NAME?': 'The formula uses a name that is not known here.',
  '#REF!': 'The formula refers to a cell that no longer exists.',
  '#NULL!': 'The ranges in the formula have no cell in common.',
  '#SPILL!': 'The result needs more cells than are free. Clear the cells right of and below this one.',
  '#CALC!': 'The spreadsheet could not calculate this formula.',
  '#BUSY!': 'The result is still being calculated.',
};

/** The children of a callout: a title that says error, code and cell in words, and the message below. */
export function errorCallout(error: CellError, cell?: string): HTMLElement[] {
  const message = error.message || MEANINGS[error.code] || 'The cell holds an error.';
  return [
    element('p', { class: 'fh-fault-title', children: [`Error${cell ? ` in ${cell}` : ''}: `, element('code', { children: [error.code] })] }),
    element('p', { class: 'fh-fault-message', children: [message] }),
  ];
}
