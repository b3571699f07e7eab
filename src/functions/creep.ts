import { creep as creepOf, type TimedReading } from '../metrology/creep';
import type { Cells } from './cells';
import { CellFault } from './faults';
import { isBlank, numberAt, readNonZero, readNumber } from './readCell';

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
  return creepOf(readRecord(times, readings), output, minute(from, 'from'), minute(to, 'to'));
}

function readRecord(times: Cells, readings: Cells): TimedReading[] {
  const timeCells = times.flat();
  const readingCells = readings.flat();
  if (timeCells.length !== readingCells.length) {
    throw new CellFault('#VALUE!', `times has ${timeCells.length} cells and readings ${readingCells.length}; expected the same number`);
  }
  return timeCells.flatMap((cell, i) => {
    const time = numberAt(cell, 'times', i + 1);
    const reading = numberAt(readingCells[i], 'readings', i + 1);
    if (reading === undefined) return [];
    if (time === undefined) throw new CellFault('#VALUE!', `readings row ${i + 1}: found the reading ${reading} without a time; expected one in the same row`);
    return [{ row: i + 1, time, reading }];
  });
}
