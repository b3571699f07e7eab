import { creep as creepOf } from '../metrology/creep';
import { isBlank, readNonZero, readNumber, readPairs } from './readCell';

/**
 * Creep under constant load, or creep return after it, as a fraction of rated output.
 * @customfunction CREEP
 * @group Static characteristics
 * @param {any[][]} times Times in minutes, rising; one column or row.
 * @param {any[][]} readings Readings at those times, output units.
 * @param {any} ratedOutput Rated output, output units.
 * @param {any} [from] Minute to start from; the first of the record if left out.
 * @param {any} [to] Minute to end at; the last of the record if left out.
 * @returns {any} Signed fraction of rated output.
 * @formula (X(to) − X(from))/RO, linear between readings
 * @source ANSI/ISA-S37.1 vocabulary
 * @note For creep return give the record after the load is taken off. Keep clear of a cell under load while it creeps.
 * @example =PROVE.CREEP({0;10;30},{2;2.001;2.0014},2,0,20) → 0.0006
 */
export function creep(times: any[][], readings: any[][], ratedOutput: any, from?: any, to?: any): any {
  const output = readNonZero(ratedOutput, 'ratedOutput');
  const minute = (cell: any, argument: string) => (isBlank(cell) ? undefined : readNumber(cell, argument));
  const record = readPairs(times, readings, ['times', 'readings'], 'time').map(({ place, first, second }) => ({ place, time: first, reading: second }));
  return creepOf(record, output, minute(from, 'from'), minute(to, 'to'));
}
