import { readingsOf } from '../block';
import { limitOf } from '../resultLimit';
import { percent } from '../shown';
import type { Finding } from './finding';
import { readingStep } from './readingStep';
import type { RunSheet } from './runSheet';
import { greatestForce, trendOf } from './trend';

/** Zero return that is taken as too large where the sheet sets no limit, fraction of output. Common practice, no source. */
const USUAL_LIMIT = 0.001;

/** Runs whose zero, in a later row, does not come back to the zero before the run. */
export function zeroReturns(sheet: RunSheet): Finding[] {
  return sheet.forceBlocks().flatMap((block) => {
    const step = readingStep(sheet, block);
    const set = limitOf(sheet.cells, 'zeroreturn', block.id);
    const limit = set ?? USUAL_LIMIT;
    return block.runs.flatMap((_, run): Finding[] => {
      const points = readingsOf(block, run);
      const trend = trendOf(points);
      const [first, ...later] = points.filter(({ applied }) => applied === 0);
      if (!trend || later.length === 0 || first.row !== 0) return [];
      const shift = (zero: { reading: number }) => Math.abs(zero.reading - first.reading);
      const worst = later.reduce((most, zero) => (shift(zero) > shift(most) ? zero : most));
      const greatest = greatestForce(points);
      const share = shift(worst) / Math.abs(trend.slope * greatest);
      if (share <= limit || shift(worst) <= 1.5 * step) return [];
      return [{
        severity: 'odd', at: worst.cell.at,
        message: `${sheet.runName(block, run)}: the zero in ${worst.cell.at}, ${sheet.output(worst.reading)}, differs from the zero before the run in ${first.cell.at}, ${sheet.output(first.reading)}, `
          + `by ${percent(share)} of the output at ${sheet.force(greatest)}; expected within ${percent(limit)}${set === undefined ? ' (common practice, no source)' : ''}`,
      }];
    });
  });
}
