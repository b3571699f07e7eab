import { PROVING_CLASS_NAMES, PROVING_CLASSES, PROVING_PARAMETERS, type ProvingClass } from '../metrology/forceProvingLimits';
import type { Cells } from './cells';
import { CellFault } from './faults';
import { named, numberAt, placeIn, sizeOf } from './readCell';

/** Past 2 % a limit was meant as a figure in percent: the standard's own end at 0.5 %. */
const GREATEST_LIMIT = 0.02;

/**
 * Limits of the classes 00, 0.5, 1, 2, a row each: b, b′, fc, f0, v, c, U of force, and r/F in an eighth column if there is one.
 * A blank cell is not judged; without an eighth column r/F keeps its own limits; without the argument all do.
 */
export function readProvingLimits(cells: Cells | null): readonly ProvingClass[] {
  if (cells === null) return PROVING_CLASSES;
  const width = cells[0].length;
  if (cells.length !== PROVING_CLASS_NAMES.length || width < PROVING_PARAMETERS.length - 1 || width > PROVING_PARAMETERS.length) {
    throw new CellFault('#VALUE!', `limits: found ${sizeOf(cells)}; expected 4 rows (classes ${PROVING_CLASS_NAMES.join(', ')}) and 7 columns (${PROVING_PARAMETERS.slice(0, 7).join(', ')}), or 8 with r/F`);
  }
  return PROVING_CLASSES.map(({ name, limits }, row) => ({
    name,
    limits: Object.fromEntries(PROVING_PARAMETERS.map((parameter, column) => [parameter, column < width ? limitAt(cells, row, column) : limits[parameter]])),
  }));
}

function limitAt(cells: Cells, row: number, column: number): number | undefined {
  const limit = numberAt(cells, row, column, 'limits');
  if (limit === undefined || (limit >= 0 && limit <= GREATEST_LIMIT)) return limit;
  throw new CellFault('#VALUE!', `${named('limits', placeIn(cells, row, column))}: found ${limit}; expected a fraction from 0 to ${GREATEST_LIMIT}, such as 0.0005 for 0.05 %`);
}
