import { checkHeading, checkLines } from './checkLines';
import type { Desk } from './desk';
import { fitChecks } from './plainFit';
import { staticChecks } from './plainStatics';
import { type PlainCells, plainTable, whole } from './plainTable';
import type { StaticId } from './staticResults';

/**
 * The check with plain formulas of a block of readings: a table from the readings alone, and the main results from it.
 * `statics` are the results that the block has, `name` makes the name of a result; gives the next free row.
 */
export function plainCheck(desk: Desk, row: number, cells: PlainCells, statics: readonly StaticId[], name: (id: string) => string): number {
  const { block, fit } = cells;
  const table = plainTable(desk, checkHeading(desk, row, `, ${block.title.toLowerCase()}`), cells);
  const ofStatics = staticChecks(cells, table, statics);
  const ofFit = fit === undefined ? [] : fitChecks(desk.sheet, cells, table, fit, table.nextRow + 1 + ofStatics.length);
  return checkLines(desk, table.nextRow, [...ofStatics, ...ofFit].map((line) => ({ ...line, id: name(line.id), plain: whole(block, line.plain) })));
}
