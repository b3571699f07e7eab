import { staticRuns, type StaticRuns } from '../metrology/staticRuns';
import type { Cells } from './cells';
import { readRuns } from './readRuns';

/** Reads runs and makes them ready for the static characteristics: net of the initial zero, rated output found. */
export function readStatics(forces: Cells, readings: Cells): StaticRuns {
  return staticRuns(readRuns(forces, readings).runs);
}
