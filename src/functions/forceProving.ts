import { provingUncertainty } from '../metrology/forceProvingUncertainty';
import { EQUATION_FORMS, uncertaintyEquation } from '../metrology/forceProvingEquation';
import { CellFault } from './faults';
import { isBlank, named, readNumber, readPairs, readWord } from './readCell';
import { readProving } from './readProving';
import { magnitudes } from './readRuns';
import { headed } from './table';

/**
 * Force-proving instrument: mean deflection and relative errors at each force.
 * @customfunction FORCEPROVING
 * @group Force-proving instruments
 * @param {any[][]} forces Forces, one column; zero rows are left out.
 * @param {any[][]} series Net readings, six columns: X1, X2 (same position), X3, X4′ (decreasing), X5, X6′ (decreasing); X3 to X6′ rotated; X4′ and X6′ blank if not run.
 * @param {any} [degree] Degree of the interpolation polynomial, 1 to 3; 3 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of seven columns, forces rising: force; Xr and Xa in output units; b, b′, fc and v as fractions.
 * @formula Xr = (X1 + X3 + X5)/3, Xa = polynomial fitted to Xr; b = (max − min of X1, X3, X5)/|Xr|, b′ = |X2 − X1|/|Xwr|, fc = (Xr − Xa)/Xa, v = mean of |X4′ − X3|/|X3| and |X6′ − X5|/|X5|
 * @source ISO 376:2011 (from memory)
 * @note The polynomial has a constant term and goes through the mean deflections of the increasing series.
 * @example =INDEX(PROVE.FORCEPROVING({50;75;100},{1,1.002,1.001,1.003,0.999,1.001;1.5,1.5,1.5,1.5,1.5,1.5;2,2,2,"",2,""},1),2,4) → 0.002
 */
export function forceProving(forces: any[][], series: any[][], degree?: any, headers?: any): any[][] {
  const { proving } = readProving(forces, series, degree);
  const rows = proving.figures.map((at) => [
    at.step.force, at.mean, at.fitted, at.reproducibility, at.repeatability, at.interpolation, at.reversibility,
  ]);
  return headed(['Force', 'Xr', 'Xa', 'b', 'b′', 'fc', 'v'], rows, headers);
}

/**
 * Force-proving instrument: relative uncertainty at each force, component by component.
 * @customfunction FORCEUNCERTAINTY
 * @group Force-proving instruments
 * @param {any[][]} forces Forces, one column; zero rows are left out.
 * @param {any[][]} series Net readings, six columns: X1, X2, X3, X4′, X5, X6′, as in FORCEPROVING.
 * @param {any} [degree] Degree of the interpolation polynomial, 1 to 3; 3 if left out.
 * @param {any} [resolution] Resolution r of the indicator, force units.
 * @param {any[][]} [zeros] Zero before and zero after, two columns, a row a series; output units.
 * @param {any[][]} [creep] Two cells: readings 30 s and 300 s after the greatest force is applied or removed; output units. Left out, v stands in.
 * @param {any[][]} [forceU] Relative expanded uncertainty (k = 2) of the applied force, a fraction; one cell, or one a force.
 * @param {any} [temperature] K·ΔT: temperature coefficient of sensitivity times the span of temperature in use, a fraction.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of eleven columns, forces rising: force; w1 to w8, wc and W as fractions. What is not given is blank and counts as 0.
 * @formula w1 = W_force/2, w2 = √(Σ(Xi − Xr)²/6)/|Xr|, w3 = b′/√3, w4 = r/(F·√6), w5 = c/√3 or v/(3·√3), w6 = f0, w7 = K·ΔT/(2·√3), w8 = (F_N/F)·√(δr/(n − d − 1))/|X_N|; wc = √Σw², W = 2·wc
 * @source ISO 376:2011 Annex C (from memory)
 * @note Where there is no v, as a rule at the greatest force, w5 takes the v of the nearest force below.
 * @note w7 is the use at other temperatures; drift since the calibration and the use of the instrument add their own parts.
 * @example =INDEX(PROVE.FORCEUNCERTAINTY({50;75;100},{1,1,1,"",1,"";1.5,1.5,1.5,"",1.5,"";2,2,2,"",2,""},1,,,,0.0002),2,11) → 0.0002
 */
export function forceUncertainty(
  forces: any[][], series: any[][], degree?: any, resolution?: any, zeros?: any[][], creep?: any[][], forceU?: any[][],
  temperature?: any, headers?: any,
): any[][] {
  const { proving, tests } = readProving(forces, series, degree, { resolution, zeros, creep, forceU });
  const known = isBlank(temperature) ? tests : { ...tests, temperature: readNumber(temperature, 'temperature') };
  const rows = provingUncertainty(proving, known).map(({ force, components, combined, expanded }) => [force, ...components, combined, expanded]);
  return headed(['Force', 'w1', 'w2', 'w3', 'w4', 'w5', 'w6', 'w7', 'w8', 'wc', 'W'], rows, headers);
}

/**
 * Equation for the relative expanded uncertainty W over force.
 * @customfunction FORCEUNCERTAINTYFIT
 * @group Force-proving instruments
 * @param {any[][]} forces Forces, one column, as FORCEUNCERTAINTY lists them; without the header.
 * @param {any[][]} uncertainties W at those forces, the last column of FORCEUNCERTAINTY; without the header.
 * @param {any} [form] "inverse" (default): W = a0 + a1/F; "linear": W = a0 + a1·F; "quadratic": W = a0 + a1·F + a2·F².
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} One row: equation, a0, a1, a2; greatest shortfall of the fit below W and the force where it occurs; a0 raised by it; from and to, force units.
 * @formula least squares of W over 1/F or F; raised a0 = a0 + greatest (W − fitted W), if that is above 0
 * @source ISO 376:2011 Annex C (from memory): a best fit whose form follows the results, made safer where it lies below them
 * @note Part of W is the same at every force and part falls as 1/F: so the inverse form is the default. W·F is then the line a0·F + a1.
 * @note With the raised a0 the equation lies below W at none of the forces. It holds between from and to only.
 * @example =PROVE.FORCEUNCERTAINTYFIT({1;2;4},{0.003;0.002;0.0015},"inverse",FALSE) → {"W = a0 + a1/F",0.001,0.002,"",0,1,0.001,1,4}
 */
export function forceUncertaintyFit(forces: any[][], uncertainties: any[][], form?: any, headers?: any): any[][] {
  const shape = readWord(form, 'form', EQUATION_FORMS);
  magnitudes(forces); // refuses a block that mixes directions
  const points = readPairs(forces, uncertainties, ['forces', 'uncertainties'], 'force').flatMap(({ place, first, second }) => {
    if (second < 0) throw new CellFault('#VALUE!', `${named('uncertainties', place)}: found ${second}; expected 0 or more, a fraction`);
    return first === 0 ? [] : [{ force: Math.abs(first), uncertainty: second }];
  });
  const { coefficients: [a0, a1, a2], ...equation } = uncertaintyEquation(points, shape);
  return headed(
    ['Equation', 'a0', 'a1', 'a2', 'Greatest shortfall', 'At force', 'a0 raised', 'From', 'To'],
    [[EQUATIONS[shape], a0, a1, a2, equation.shortfall, equation.shortfallAt, equation.coveringConstant, equation.from, equation.to]],
    headers,
  );
}

const EQUATIONS = { inverse: 'W = a0 + a1/F', linear: 'W = a0 + a1·F', quadratic: 'W = a0 + a1·F + a2·F²' } as const;
