import { formula } from '../planBuilder';
import type { Desk } from './desk';
import { withoutArms } from './inspectionReadings';
import type { InspectionCells } from './inspectionResults';
import type { ResultTable } from './resultTable';

/** Columns: what was found, and below it what it fits. */
const FOUND = 1;
const FITS = 2;
/** Lines of BRIDGEEVIDENCE, at the most, besides the last, which is the same for every bridge. */
const MOST = 4;
/** Where the ordinary ends if the sheet has no limit: common practice, no source. */
const USUAL = 0.02;
/** The last line of BRIDGEEVIDENCE, which is too long for a cell that cannot wrap. */
const UNTOLD = 'They cannot tell whether it was so from new; when or how it happened; whether a trim or repair was made before; moisture or a bent body behind the same numbers; span, linearity, fatigue: only a run tells.';

/** What the numbers fit, each line below what was found; gives the next free row. The lines are not merged: Excel takes no array there. */
export function evidenceList({ sheet, width }: Desk, row: number, { resistances, zero, resistance, ratedOutput }: InspectionCells, { limits }: ResultTable): number {
  const limit = (id: string) => `IF(${limits.get(id)}>0,${limits.get(id)},${USUAL})`;
  const evidence = `PROVE.BRIDGEEVIDENCE(${resistances.arms},${resistance},${zero.now},${ratedOutput},${limit('zero_balance')},,,,${limit('zero_difference')},FALSE)`;
  const missing = `OR(${withoutArms(resistances)},${zero.now}="",${ratedOutput}="",${resistance}="")`;
  sheet.wide(1, row, width, 'heading', 'What the numbers fit');
  sheet.wide(1, row + 1, width, 'note', `Evidence, no verdict, and no part of the outcome (PROVE.BRIDGEEVIDENCE). ${UNTOLD} Corners read to 0.01 Ω leave the zero that they imply in doubt by up to 10/R mV/V, 0.03 mV/V at 350 Ω.`);
  const first = row + 2;
  for (let i = 0; i < MOST; i += 1) {
    const line = (column: number) => formula(`IF(${missing},"",IF(ROWS(${evidence})>${i + 1},INDEX(${evidence},${i + 1},${column}),""))`);
    sheet.put(FOUND, first + 2 * i, 'label', line(1)).put(FITS, first + 2 * i + 1, 'aside', line(2));
  }
  return first + 2 * MOST + 1;
}
