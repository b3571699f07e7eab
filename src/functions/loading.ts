import { CLASS_MULTIPLES, loadingRange, lowerLimitFactor, type LoadingClass } from '../metrology/loadingRange';
import type { Cell, Cells } from './cells';
import { CellFault } from './faults';
import { readNumber, readWord } from './readCell';
import { readFit } from './readFit';
import { headed } from './table';

/**
 * Lower limit factor (LLF) in force units.
 * @customfunction LIMITFACTOR
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} degree Degree of the polynomial, 1 to 5.
 * @param {any} [resolution] Resolution of transducer and indicator, force units; 0 if left out.
 * @returns {any} LLF in force units.
 * @formula LLF = 2.4·s·mean(F/X) over all readings under load, not below the resolution
 * @source ASTM E74 (from memory)
 * @note Older editions call 2.4·s the uncertainty. It is one component of it only.
 * @example =PROVE.LIMITFACTOR({1;2;3},{1;2;3},1,0.01) → 0.01
 */
export function limitFactor(forces: any[][], readings: any[][], degree: any, resolution?: any): any {
  const { points, fit } = readFit(forces, readings, degree);
  return lowerLimitFactor(points, fit, readResolution(resolution));
}

/**
 * Lower load limit of a class.
 * @customfunction LOWERLIMIT
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} degree Degree of the polynomial, 1 to 5.
 * @param {any} loadingClass "AA" (0.05 % of force) or "A" (0.25 %).
 * @param {any} [resolution] Resolution of transducer and indicator, force units; 0 if left out.
 * @returns {any} Lowest force at which the class holds, force units; #N/A if it is not met.
 * @formula the greatest of k·LLF, k·resolution and the lowest non-zero force; k = 2000 (AA), 400 (A)
 * @source ASTM E74 (from memory)
 * @example =PROVE.LOWERLIMIT({10;20;30},{1;2;3},1,"A",0.02) → 10
 */
export function lowerLimit(forces: any[][], readings: any[][], degree: any, loadingClass: any, resolution?: any): any {
  return readRange(forces, readings, degree, loadingClass, resolution).from;
}

/**
 * Range of forces over which a class holds, and what set its lower end.
 * @customfunction LOADRANGE
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} degree Degree of the polynomial, 1 to 5.
 * @param {any} loadingClass "AA" (0.05 % of force) or "A" (0.25 %).
 * @param {any} [resolution] Resolution of transducer and indicator, force units; 0 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} From, to (force units) and the rule that set the lower limit; #N/A if the class is not met.
 * @formula from = lower load limit; to = greatest force applied
 * @source ASTM E74 (from memory)
 * @example =PROVE.LOADRANGE({10;20;30},{1;2;3},1,"A",0.03,FALSE) → {12,30,"resolution"}
 */
export function loadRange(
  forces: any[][], readings: any[][], degree: any, loadingClass: any, resolution?: any, headers?: any,
): any[][] {
  const { from, to, rule } = readRange(forces, readings, degree, loadingClass, resolution);
  return headed(['From', 'To', 'Limited by'], [[from, to, rule]], headers);
}

function readRange(forces: Cells, readings: Cells, degree: Cell, loadingClass: Cell, resolution: Cell) {
  const name = readWord(loadingClass, 'loadingClass', Object.keys(CLASS_MULTIPLES) as LoadingClass[], true);
  const { points, fit } = readFit(forces, readings, degree);
  return loadingRange(points, fit, name, readResolution(resolution));
}

function readResolution(cell: Cell): number {
  const resolution = readNumber(cell, 'resolution', 0);
  if (resolution < 0) throw new CellFault('#VALUE!', `resolution: found ${resolution}; expected 0 or more, in force units`);
  return resolution;
}
