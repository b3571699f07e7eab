import type { Cell, CellFault, CellValue } from './cells';
import { readFlag } from './readCell';

/** A spilled table: a header row, unless the function's last argument says FALSE, then its rows. An absent value shows as "". */
export function headed(
  header: readonly string[], rows: readonly (readonly (CellValue | CellFault | undefined)[])[], headers: Cell,
): (CellValue | CellFault)[][] {
  const body = rows.map((row) => row.map((cell) => cell ?? ''));
  return readFlag(headers, 'headers', true) ? [[...header], ...body] : body;
}
