import { bestDegree, degreeSteps } from '../metrology/degree';
import { GREATEST_DEGREE } from '../metrology/polynomialFit';
import type { Cell, Cells } from './cells';
import { isBlank, readWhole } from './readCell';
import { readRuns } from './readRuns';
import { headed } from './table';

/**
 * Degree of best fit: the highest degree whose term is significant.
 * @customfunction FITDEGREE
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} [maxDegree] Highest degree tried, 1 to 5; 5 if left out, less where the forces are too few.
 * @returns {any} Degree, 1 to 5.
 * @formula from the highest degree down, the first m with s(m−1)/s(m) > C(n1, m), else 1; fitted to the run averages
 * @source ASTM E74
 * @note A degree above 2 asks for a resolution finer than 1/50 000 of the output at the greatest force: set maxDegree to 2 without it.
 * @example =PROVE.FITDEGREE({1;2;3;4;5;6},{1.001;3.998;9.001;16.002;24.999;35.999}) → 2
 */
export function fitDegree(forces: any[][], readings: any[][], maxDegree?: any): any {
  return bestDegree(readSteps(forces, readings, maxDegree));
}

/**
 * The degree test, degree by degree.
 * @customfunction DEGREETABLE
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} [maxDegree] Highest degree tried, 1 to 5; 5 if left out, less where the forces are too few.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of five columns: degree m, s(m) in output units, s(m−1)/s(m), C(n1, m), whether the ratio exceeds C.
 * @formula C(n1, m) = √(1 + (F₀.₉₇₅(1, n1 − m − 1) − 1)/(n1 − m)), n1 = number of different forces
 * @source ASTM E74; C recomputed from the F distribution
 * @note s is taken from the run averages here, not from the single readings as in FITREPORT.
 * @example =INDEX(PROVE.DEGREETABLE({1;2;3;4;5;6;7;8;9;10},{1;2;3.1;4;5;6;7;8;9;10}),3,4) → 1.372619251656097
 */
export function degreeTable(forces: any[][], readings: any[][], maxDegree?: any, headers?: any): any[][] {
  const rows = readSteps(forces, readings, maxDegree).map((step) => [
    step.degree, step.residualSd, step.ratio, step.threshold, step.degree === 1 ? undefined : step.significant,
  ]);
  return headed(['Degree', 's', 'Ratio', 'C', 'Significant'], rows, headers);
}

function readSteps(forces: Cells, readings: Cells, maxDegree: Cell) {
  const most = isBlank(maxDegree) ? undefined : readWhole(maxDegree, 'maxDegree', 1, GREATEST_DEGREE);
  return degreeSteps(readRuns(forces, readings).runs, most);
}
