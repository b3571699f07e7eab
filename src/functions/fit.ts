import { lackOfFit } from '../metrology/lackOfFit';
import { isZero, type Point, type Run } from '../metrology/run';
import type { BlockFit } from './readFit';
import { readFit } from './readFit';
import { shapedLike } from './readRuns';
import { headed } from './table';

/**
 * Coefficients of the calibration polynomial by least squares, constant first.
 * @customfunction FIT
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} degree Degree of the polynomial, 1 to 5.
 * @param {any} [form] "response" (default): output as a polynomial of force; "force": force as a polynomial of output.
 * @param {any} [constant] TRUE (default): A0 is fitted; FALSE: A0 is held at 0.
 * @returns {any[][]} Coefficients A0, A1 … Am in a column; output units per power of force ("force": the other way round).
 * @formula X = A0 + A1·F + A2·F² + … + Am·F^m, with Σ(X − fitted)² least
 * @source ASTM E74; digits certified against NIST StRD
 * @note Zero rows take no part in the fit. Force is taken as |force|: a compression block gives the polynomial of |F|.
 * @example =PROVE.FIT({1;2;3;4},{2;5;10;17},2) → {1;0;1}
 * @example =PROVE.FIT({10;20;30},{1.5;3;4.5},1,"response",FALSE) → {0;0.15}
 */
export function fit(forces: any[][], readings: any[][], degree: any, form?: any, constant?: any): any[][] {
  return readFit(forces, readings, degree, form, constant).fit.coefficients.map((coefficient) => [coefficient]);
}

/**
 * Report of the calibration polynomial: coefficients with standard errors, and the statistics of the fit.
 * @customfunction FITREPORT
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} degree Degree of the polynomial, 1 to 5.
 * @param {any} [form] "response" (default): output as a polynomial of force; "force": force as a polynomial of output.
 * @param {any} [constant] TRUE (default): A0 is fitted; FALSE: A0 is held at 0.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of four columns: quantity, value, standard error, t.
 * @formula t = coefficient / standard error
 * @formula s = √(Σ residual² / dof), dof = n − m − 1 (n − m with A0 held at 0)
 * @formula R² = 1 − Σ residual² / Σ(X − mean)² (over ΣX² with A0 held at 0)
 * @formula lack-of-fit F = (what the means miss, per dof) / (scatter of repeats, per dof)
 * @source ASTM E74; NIST/SEMATECH e-Handbook 4.6.1 and 4.4.4.6
 * @note n counts every reading under load. The lack-of-fit rows stay empty without repeated forces.
 * @example =INDEX(PROVE.FITREPORT({1;2;3;4},{2.1;3.9;6.1;7.9},1),5,2) → 2
 */
export function fitReport(
  forces: any[][], readings: any[][], degree: any, form?: any, constant?: any, headers?: any,
): any[][] {
  const blockFit = readFit(forces, readings, degree, form, constant);
  const rows = [...coefficientRows(blockFit), ...statisticRows(blockFit)];
  return headed(['Quantity', 'Value', 'Standard error', 't'], rows, headers);
}

type ReportRow = (string | number | undefined)[];

function coefficientRows({ fit }: BlockFit): ReportRow[] {
  return fit.coefficients.map((coefficient, power) => {
    const error = fit.standardErrors[power];
    return [`A${power}`, coefficient, error, error ? coefficient / error : undefined];
  });
}

function statisticRows({ block, fit, points, form }: BlockFit): ReportRow[] {
  const force = points.map((point) => point.force);
  const output = points.map((point) => point.reading);
  const lack = form === 'response' ? lackOfFit(force, output, fit) : lackOfFit(output, force, fit);
  const worst = fit.residuals.reduce((most, residual, i) => (Math.abs(residual) > Math.abs(fit.residuals[most]) ? i : most), 0);
  const rows: [string, string | number | undefined][] = [
    ['Readings', fit.n],
    ['Degrees of freedom', fit.dof],
    ['Residual standard deviation', fit.residualSd],
    ['R²', fit.rSquared],
    ['Largest residual', fit.residuals[worst]],
    ['… at force', points[worst].force],
    ['… in row', points[worst].row],
    ['… of run', runOf(block.runs, points[worst])],
    ['Lack-of-fit F', lack?.f],
    ['… probability', lack?.p],
  ];
  return rows.map(([quantity, value]) => [quantity, value, undefined, undefined]);
}

/** Number of the run that holds a point, from 1. */
function runOf(runs: readonly Run[], point: Point): number {
  return runs.findIndex((run) => run.includes(point)) + 1;
}

/**
 * Residuals of the calibration polynomial: reading − fitted.
 * @customfunction RESIDUALS
 * @group Polynomial calibration
 * @param {any[][]} forces Forces in the order applied, zero rows included; one column for all runs, or one a run.
 * @param {any[][]} readings Net readings (see NET), a column a run.
 * @param {any} degree Degree of the polynomial, 1 to 5.
 * @param {any} [form] "response" (default): residuals of output; "force": residuals of force.
 * @param {any} [constant] TRUE (default): A0 is fitted; FALSE: A0 is held at 0.
 * @returns {any[][]} Residuals shaped like readings, output units ("force": force units).
 * @formula d = X − (A0 + A1·F + … + Am·F^m)
 * @source ASTM E74
 * @note Zero rows take no part in the fit and stay blank, so Σd² of the block is dof·s².
 * @example =PROVE.RESIDUALS({0;1;2;3},{0;1;3;2},1) → {"";-0.5;1;-0.5}
 */
export function residuals(forces: any[][], readings: any[][], degree: any, form?: any, constant?: any): any[][] {
  const { block, fit } = readFit(forces, readings, degree, form, constant);
  let next = 0;
  return shapedLike(block, block.runs.map((run) => run.map((point) => (isZero(point) ? '' : fit.residuals[next++]))));
}
