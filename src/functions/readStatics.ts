import { staticRuns, type StaticRuns } from '../metrology/staticRuns';
import type { Cells } from './cells';
import { CellFault } from './faults';
import { named } from './readCell';
import { readRuns } from './readRuns';

/**
 * Reads runs and makes them ready for the static characteristics: net of the initial zero, rated output found.
 * A run that is not read at its greatest force would be judged by a smaller output, so it is refused.
 */
export function readStatics(forces: Cells, readings: Cells): StaticRuns {
  const { runs, greatest } = readRuns(forces, readings);
  for (const { place, missing } of greatest) {
    if (missing) throw new CellFault('#VALUE!', `${named('readings', place)}: found nothing at the greatest force; expected a reading`);
  }
  return staticRuns(runs);
}
