import type { Arms } from '../metrology/bridgeArms';
import type { Cells } from './cells';
import { CellFault } from './faults';
import { named, readList } from './readCell';

/** The four arms of a bridge, ohms, from one column or row of four cells. */
export function readArms(arms: Cells): Arms {
  const list = readList(arms, 'arms');
  if (list.length !== 4) {
    throw new CellFault('#VALUE!', `arms: found ${list.length === 1 ? '1 cell' : `${list.length} cells`}; expected 4, arms 1 to 4 in order around the bridge`);
  }
  const values = list.map(({ place, value }) => {
    if (value !== undefined && value > 0) return value;
    throw new CellFault('#VALUE!', `${named('arms', place)}: found ${value ?? 'nothing'}; expected a resistance greater than 0, ohms`);
  });
  return values as unknown as Arms;
}
