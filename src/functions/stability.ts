import { shift as shiftAt, STABILITY_LIMITS, type StabilityClass, worstShift } from '../metrology/stability';
import { CellFault } from './faults';
import { isBlank, readPositive, readWord } from './readCell';
import { magnitudes } from './readRuns';
import { readCoefficients } from './response';
import { headed } from './table';

/**
 * Change of response between two calibrations, at each force.
 * @customfunction SHIFT
 * @group Stability and interval
 * @param {any[][]} oldCoefficients Coefficients A0, A1 … of output as a polynomial of force, earlier calibration (see FIT).
 * @param {any[][]} newCoefficients The same of the later calibration, in the same units.
 * @param {any[][]} forces Forces of one direction; any block of cells. Force 0 and blanks stay blank.
 * @returns {any[][]} Signed fractions of the old reading, shaped like forces: positive if the transducer gives more than before.
 * @formula (X new − X old)/X old
 * @source common practice, no source
 * @example =PROVE.SHIFT({0;0.02},{0;0.02001},{50;100}) → {0.0005;0.0005}
 */
export function shift(oldCoefficients: any[][], newCoefficients: any[][], forces: any[][]): any[][] {
  const before = readCoefficients(oldCoefficients, 'oldCoefficients');
  const after = readCoefficients(newCoefficients, 'newCoefficients');
  return magnitudes(forces).map((row) => row.map((force) => {
    if (force === undefined || force === 0) return '';
    return shiftAt(before, after, force) ?? new CellFault('#N/A', `the old response at ${force} is 0: a change has no fraction of it`);
  }));
}

/**
 * Worst change of response between two calibrations, against the limit of a class.
 * @customfunction STABILITY
 * @group Stability and interval
 * @param {any[][]} oldCoefficients Coefficients A0, A1 … of output as a polynomial of force, earlier calibration (see FIT).
 * @param {any[][]} newCoefficients The same of the later calibration, in the same units.
 * @param {any[][]} forces Forces over the range used, of one direction: from the lower load limit to the greatest. Force 0 is left out.
 * @param {any} loadingClass "AA" or "A".
 * @param {any} [limit] Limit as a fraction of reading, instead of that of the class.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Worst shift (signed fraction of the old reading), the force at which it stands, the limit, and "within" or "outside".
 * @formula worst of (X new − X old)/X old; limit 0.00032 (AA), 0.0016 (A)
 * @source ASTM E74 (limits from memory)
 * @note Outside the limit the interval until the next calibration has to be shorter. Follow the edition in your own scope.
 * @example =PROVE.STABILITY({0;0.02},{0;0.02001},{50;100},"A",,FALSE) → {0.0005,50,0.0016,"within"}
 */
export function stability(
  oldCoefficients: any[][], newCoefficients: any[][], forces: any[][], loadingClass: any, limit?: any, headers?: any,
): any[][] {
  const name = readWord(loadingClass, 'loadingClass', Object.keys(STABILITY_LIMITS) as StabilityClass[], true);
  const allowed = isBlank(limit) ? STABILITY_LIMITS[name] : readPositive(limit, 'limit');
  const loads = magnitudes(forces).flat().filter((force) => force !== undefined && force !== 0) as number[];
  if (loads.length === 0) throw new CellFault('#VALUE!', 'forces: found no force other than 0; expected forces over the range used');
  const worst = worstShift(readCoefficients(oldCoefficients, 'oldCoefficients'), readCoefficients(newCoefficients, 'newCoefficients'), loads);
  const verdict = Math.abs(worst.shift) <= allowed ? 'within' : 'outside';
  return headed(['Worst shift', 'At force', 'Limit', 'Verdict'], [[worst.shift, worst.force, allowed, verdict]], headers);
}
