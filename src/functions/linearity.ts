import { combinedError as worstOfAll, deviations as deviationsOf, nonlinearity as worstOfAscending, REFERENCE_LINES } from '../metrology/linearity';
import { errorBand as bandOf } from '../metrology/errorBand';
import { readWord } from './readCell';
import { readStatics } from './readStatics';
import { headed } from './table';

/**
 * Non-linearity: worst deviation of the ascending mean from a straight line, as a fraction of rated output.
 * @customfunction NONLINEARITY
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied, up and down, zero first and last; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run; each run's initial zero is taken off.
 * @param {any} [line] "terminal" (default): zero to greatest force; "bestfit": least squares; "zerofit": least squares through the initial zero; "minimax": smallest greatest deviation.
 * @returns {any} Signed fraction of rated output; show it as a percentage.
 * @formula worst of (X − line)/RO over the ascending part; RO = mean net output at the greatest force
 * @source ANSI/ISA-S37.1 vocabulary
 * @example =PROVE.NONLINEARITY({0;50;100},{0.01;1.012;2.01}) → 0.001
 */
export function nonlinearity(forces: any[][], readings: any[][], line?: any): any {
  return worstOfAscending(readStatics(forces, readings), readWord(line, 'line', REFERENCE_LINES));
}

/**
 * Deviations of the ascending mean from a straight line, force by force, as fractions of rated output.
 * @customfunction DEVIATIONS
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied, up and down, zero first and last; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run; each run's initial zero is taken off.
 * @param {any} [line] "terminal" (default): zero to greatest force; "bestfit": least squares; "zerofit": least squares through the initial zero; "minimax": smallest greatest deviation.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Table of two columns: |force|, deviation (fraction of rated output); a row for each force of the ascending part.
 * @formula (X − line)/RO
 * @source ANSI/ISA-S37.1 vocabulary
 * @example =PROVE.DEVIATIONS({0;50;100},{0;1.002;2},"terminal",FALSE) → {0,0;50,0.001;100,0}
 */
export function deviations(forces: any[][], readings: any[][], line?: any, headers?: any): any[][] {
  const found = deviationsOf(readStatics(forces, readings), readWord(line, 'line', REFERENCE_LINES));
  return headed(['Force', 'Deviation'], found.map(({ force, deviation }) => [force, deviation]), headers);
}

/**
 * Combined error of non-linearity and hysteresis: worst deviation of every reading, up and down, from the terminal line.
 * @customfunction COMBINEDERROR
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied, up and down, zero first and last; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run; each run's initial zero is taken off.
 * @returns {any} Signed fraction of rated output.
 * @formula worst of (X − RO·F/capacity)/RO over all rows and runs
 * @source common practice, no source
 * @example =PROVE.COMBINEDERROR({0;50;100;50;0},{0;1.001;2;1.004;0.001}) → 0.002
 */
export function combinedError(forces: any[][], readings: any[][]): any {
  return worstOfAll(readStatics(forces, readings));
}

/**
 * Static error band: half-width of the narrowest band about a line through the initial zero that holds every reading.
 * @customfunction ERRORBAND
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied, up and down, zero first and last; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run; each run's initial zero is taken off.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Half-width as a fraction of the line's output at the greatest force, and that output (output units), side by side.
 * @formula least over k of max|X − k·F|, divided by |k|·capacity; output = k·capacity
 * @source ANSI/ISA-S37.1 vocabulary
 * @note Exact, without search: the greatest deviation is convex and piecewise linear in the slope.
 * @example =PROVE.ERRORBAND({0;50;100;0},{0;1.01;1.99;0},FALSE) → {0.005,2}
 */
export function errorBand(forces: any[][], readings: any[][], headers?: any): any[][] {
  const { halfWidth, output } = bandOf(readStatics(forces, readings));
  return headed(['Error band', 'Output at greatest force'], [[halfWidth, output]], headers);
}
