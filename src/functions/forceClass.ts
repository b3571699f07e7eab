import { classAtForces, classRanges } from '../metrology/forceProvingClass';
import type { Cell, Cells } from './cells';
import { readProving } from './readProving';
import { readProvingLimits } from './readProvingLimits';
import { headed } from './table';

/**
 * Force-proving instrument: the class at each force, and what keeps it from a better one.
 * @customfunction FORCECLASS
 * @group Force-proving instruments
 * @param {any[][]} forces Forces, one column; zero rows are left out.
 * @param {any[][]} series Net readings, six columns: X1, X2, X3, X4′, X5, X6′, as in FORCEPROVING.
 * @param {any} [degree] Degree of the interpolation polynomial, 1 to 3; 3 if left out.
 * @param {any} [resolution] Resolution r of the indicator, force units.
 * @param {any[][]} [zeros] Zero before and zero after, two columns, a row a series; output units.
 * @param {any[][]} [creep] Two cells: readings 30 s and 300 s after the greatest force is applied or removed; output units. Given, the class is for increasing forces only, by c instead of v.
 * @param {any[][]} [forceU] Relative expanded uncertainty (k = 2) of the applied force, a fraction; one cell, or one a force.
 * @param {any[][]} [limits] Limits as fractions: rows 00, 0.5, 1, 2; columns b, b′, fc, f0, v, c, U of force, and r/F if wanted; blank = not judged. Those of the standard if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of six columns, forces rising: force; class; the parameter that keeps it from the next better class, its value and limit (fractions); what the class needs and was not given.
 * @formula the best class whose limits b, b′, |fc|, |f0|, v or c, U of force and r/F all keep, at a force of 2 % of the greatest or more
 * @source ISO 376:2011 (from memory)
 * @note r/F is the relative resolution: 4000, 2000, 1000 and 500 resolutions by class. "Not judged" must be empty for a class to be complete.
 * @note Limits are from memory: give those of the edition in your scope.
 * @example =INDEX(PROVE.FORCECLASS({50;75;100},{1,1.0006,1,1,1,1;1.5,1.5,1.5,1.5,1.5,1.5;2,2,2,"",2,""},1),2,2) → "1"
 */
export function forceClass(
  forces: any[][], series: any[][], degree?: any, resolution?: any, zeros?: any[][], creep?: any[][], forceU?: any[][],
  limits?: any[][], headers?: any,
): any[][] {
  const { proving, tests, classes } = readClasses(forces, series, degree, resolution, zeros, creep, forceU, limits);
  const rows = classAtForces(proving, tests, classes).map(({ force, name, breach, notJudged }) => [
    force, name ?? 'none', breach?.parameter, breach?.found, breach?.limit, notJudged.join(', '),
  ]);
  return headed(['Force', 'Class', 'Limited by', 'Found', 'Limit', 'Not judged'], rows, headers);
}

/**
 * Force-proving instrument: the range of forces over which each class holds, and what limits it.
 * @customfunction FORCECLASSRANGE
 * @group Force-proving instruments
 * @param {any[][]} forces Forces, one column; zero rows are left out.
 * @param {any[][]} series Net readings, six columns: X1, X2, X3, X4′, X5, X6′, as in FORCEPROVING.
 * @param {any} [degree] Degree of the interpolation polynomial, 1 to 3; 3 if left out.
 * @param {any} [resolution] Resolution r of the indicator, force units.
 * @param {any[][]} [zeros] Zero before and zero after, two columns, a row a series; output units.
 * @param {any[][]} [creep] Two cells: readings 30 s and 300 s after the greatest force is applied or removed; output units. Given, the class is for increasing forces only, by c instead of v.
 * @param {any[][]} [forceU] Relative expanded uncertainty (k = 2) of the applied force, a fraction; one cell, or one a force.
 * @param {any[][]} [limits] Limits as fractions: rows 00, 0.5, 1, 2; columns b, b′, fc, f0, v, c, U of force, and r/F if wanted; blank = not judged. Those of the standard if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of eight columns, a row a class: class; from ("not met" if it does not hold) and to, force units; what stops it from reaching lower, at which force, value and limit (fractions); what the class needs and was not given.
 * @formula from the greatest force down to the last force before one that breaks a limit; not met unless that reaches down to 50 % of the greatest
 * @source ISO 376:2011 (from memory)
 * @note "Not judged" must be empty for a class to be complete.
 * @note Limits are from memory: give those of the edition in your scope.
 * @example =INDEX(PROVE.FORCECLASSRANGE({25;50;75;100},{0.5,0.5003,0.5,0.5,0.5,0.5;1,1,1,1,1,1;1.5,1.5,1.5,1.5,1.5,1.5;2,2,2,"",2,""},1),2,2) → 50
 */
export function forceClassRange(
  forces: any[][], series: any[][], degree?: any, resolution?: any, zeros?: any[][], creep?: any[][], forceU?: any[][],
  limits?: any[][], headers?: any,
): any[][] {
  const { proving, tests, classes } = readClasses(forces, series, degree, resolution, zeros, creep, forceU, limits);
  const rows = classRanges(proving, tests, classes).map(({ name, range, breach, notJudged }) => [
    name, range ? range.from : 'not met', range?.to,
    breach?.parameter ?? 'lowest force applied', breach?.force ?? proving.figures[0].step.force, breach?.found, breach?.limit,
    notJudged.join(', '),
  ]);
  return headed(['Class', 'From', 'To', 'Limited by', 'At force', 'Found', 'Limit', 'Not judged'], rows, headers);
}

function readClasses(
  forces: Cells, series: Cells, degree: Cell, resolution: Cell, zeros: Cells | undefined, creep: Cells | undefined,
  forceU: Cells | undefined, limits: Cells | undefined,
) {
  return { ...readProving(forces, series, degree, { resolution, zeros, creep, forceU }), classes: readProvingLimits(limits ?? null) };
}
