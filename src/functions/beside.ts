import type { Cells } from './cells';
import { CellFault } from './faults';
import { named, numberAt, placeIn, sizeOf } from './readCell';

/** Two ranges that go together: their arguments' names, and what one cell of each is, for messages ("a reading"). */
export interface Together {
  readonly names: readonly [string, string];
  readonly nouns: readonly [string, string];
}

/**
 * Works out a value for each number of a block with the number that stands beside it; blanks of the block stay "".
 * What stands beside may be one cell for all, one column or row, or a block of the same shape.
 * @param compute gets both numbers, and where each stands, as messages name it
 */
export function eachWithBeside(
  block: Cells, beside: Cells, { names, nouns }: Together, compute: (value: number, other: number, places: readonly [string, string]) => number,
): (number | string)[][] {
  const rows = beside.length;
  const columns = beside[0].length;
  if ((rows !== 1 && rows !== block.length) || (columns !== 1 && columns !== block[0].length)) {
    throw new CellFault(
      '#VALUE!',
      `${names[1]}: found ${sizeOf(beside)} for ${sizeOf(block)} of ${names[0]}; ` +
        'expected one cell, one column or row beside them, or the same shape',
    );
  }
  return block.map((line, i) => line.map((_, j) => {
    const value = numberAt(block, i, j, names[0]);
    if (value === undefined) return '';
    const at = [rows === 1 ? 0 : i, columns === 1 ? 0 : j] as const;
    const places = [named(names[0], placeIn(block, i, j)), named(names[1], placeIn(beside, ...at))] as const;
    const other = numberAt(beside, ...at, names[1]);
    if (other === undefined) throw new CellFault('#VALUE!', `${places[1]}: found nothing beside ${nouns[0]}; expected ${nouns[1]}`);
    return compute(value, other, places);
  }));
}
