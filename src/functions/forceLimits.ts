import { forceLimits as limitsOf } from '../metrology/forceLimits';
import { MetrologyError } from '../metrology/errors';
import type { Interval } from '../metrology/polynomial';
import type { Point } from '../metrology/run';
import { CellFault } from './faults';
import { readList, readNumber } from './readCell';
import { readFit } from './readFit';
import { headed } from './table';

/**
 * Force that a new reading stands for, with its confidence limits.
 * @customfunction FORCELIMITS
 * @group Polynomial calibration
 * @param {any[][]} forces Forces of the calibration in the order applied, zero rows included.
 * @param {any[][]} readings Net readings of the calibration (see NET), a column a run.
 * @param {any} degree Degree of the polynomial, 1 to 5.
 * @param {any[][]} reading New net reading, or a column of them.
 * @param {any} [probability] Probability that the limits enclose the force, between 0 and 1; 0.95 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of three columns: force, lower limit, upper limit; force units; a row for each reading.
 * @formula limits: the roots of f(F) ∓ t·s·√(1 + x′(X′X)⁻¹x) = reading, x = (1, F, … F^m), t of Student with the dof of the fit
 * @source NIST/SEMATECH e-Handbook 4.6.1
 * @note The force is looked for over the forces of the calibration, and beyond either end no further than the scatter reaches.
 * @note The limits hold the scatter of the calibration and of one reading; they are not the whole uncertainty.
 * @example =INDEX(PROVE.FORCELIMITS({1;2;3;4;5},{2;4;6;8;10},1,5),2,1) → 2.5
 */
export function forceLimits(
  forces: any[][], readings: any[][], degree: any, reading: any[][], probability?: any, headers?: any,
): any[][] {
  const share = readNumber(probability, 'probability', 0.95);
  if (!(share > 0 && share < 1)) {
    throw new CellFault('#VALUE!', `probability: found ${share}; expected a number between 0 and 1, such as 0.95`);
  }
  const { fit, points } = readFit(forces, readings, degree);
  const limitsAt = limitsOf(fit, rangeOf(points), share);
  const asked = readList(reading, 'reading');
  if (asked.every(({ value }) => value === undefined)) throw new CellFault('#VALUE!', 'reading: found nothing; expected a net reading');
  const rows = asked.map(({ value }) => {
    if (value === undefined) return ['', '', ''];
    try {
      const { force, lower, upper } = limitsAt(value);
      return [force, lower, upper];
    } catch (error) {
      if (!(error instanceof MetrologyError) || error.kind === 'input' || asked.length === 1) throw error;
      return [0, 1, 2].map(() => new CellFault('#N/A', error.message));
    }
  });
  return headed(['Force', 'Lower limit', 'Upper limit'], rows, headers);
}

/** From the lowest to the greatest force of the calibration. */
function rangeOf(points: readonly Point[]): Interval {
  return points.reduce(({ from, to }, { force }) => ({ from: Math.min(from, force), to: Math.max(to, force) }), { from: Infinity, to: 0 });
}
