import { netRun, ZERO_METHODS } from '../metrology/net';
import { readWord } from './readCell';
import { readRuns, shapedLike } from './readRuns';

/**
 * Net readings: each reading less the zero of its run.
 * @customfunction NET
 * @group Reduction
 * @param {any[][]} forces Forces in the order applied, force 0 on zero rows; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run.
 * @param {any} [zero] "initial" (default): the zero before the run; "average": the mean of first and last zero; "interpolated": between the zeros that bracket a row.
 * @returns {any[][]} Net readings, shaped like readings, in output units.
 * @formula net = reading − zero
 * @source ASTM E74, methods A and B (from memory)
 * @note The zero before the run is the first row of the range: leave exercise loads before it out. A blank reading stays blank. "average" and "interpolated" need a zero after the last force.
 * @example =PROVE.NET({0;50;100;0},{0.01;1.01;2.012;0.014}) → {0;1;2.002;0.004}
 * @example =PROVE.NET({0;50;100;0},{0.01;1.01;2.012;0.013},"interpolated") → {0;0.999;2;0}
 */
export function net(forces: any[][], readings: any[][], zero?: any): any[][] {
  const method = readWord(zero, 'zero', ZERO_METHODS);
  const block = readRuns(forces, readings);
  return shapedLike(block, block.runs.map((run) => netRun(run, method).map((point) => point.reading)));
}
