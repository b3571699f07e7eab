import { hysteresis as hysteresisOf, repeatability as repeatabilityOf, zeroReturn as zeroReturnOf } from '../metrology/repeats';
import { sensitivity as sensitivityOf } from '../metrology/staticRuns';
import { isBlank, readNonZero, readNumber } from './readCell';
import { readStatics } from './readStatics';

/**
 * Sensitivity (rated output): net output at the greatest force, mean of the runs, scaled to a capacity if one is given.
 * @customfunction SENSITIVITY
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied, zero first; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run; each run's initial zero is taken off.
 * @param {any} [capacity] Capacity to scale to, force units; the greatest force if left out.
 * @returns {any} Net output at capacity, output units, sign kept.
 * @formula RO = mean(X at greatest force − initial zero)·capacity/greatest force
 * @source ANSI/ISA-S37.1 vocabulary
 * @example =PROVE.SENSITIVITY({0;50;100},{0.01;1.01;2.01},150) → 3
 */
export function sensitivity(forces: any[][], readings: any[][], capacity?: any): any {
  const data = readStatics(forces, readings);
  return sensitivityOf(data, isBlank(capacity) ? undefined : Math.abs(readNonZero(capacity, 'capacity')));
}

/**
 * Hysteresis: difference between descending and ascending reading at the same force, as a fraction of rated output.
 * @customfunction HYSTERESIS
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied, up and down; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run; each run's initial zero is taken off.
 * @param {any} [at] Force at which to take it; the worst over all forces if left out.
 * @returns {any} Signed fraction of rated output: positive if the reading is greater on the way down.
 * @formula worst of (X descending − X ascending)/RO within a run, the zeros included
 * @source ANSI/ISA-S37.1 vocabulary (within one cycle; from memory)
 * @example =PROVE.HYSTERESIS({0;50;100;50;0},{0;1.001;2;1.004;0.001}) → 0.0015
 */
export function hysteresis(forces: any[][], readings: any[][], at?: any): any {
  const data = readStatics(forces, readings);
  return hysteresisOf(data, isBlank(at) ? undefined : Math.abs(readNumber(at, 'at')));
}

/**
 * Repeatability: worst spread between runs at the same force and branch, as a fraction of rated output.
 * @customfunction REPEATABILITY
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied; one column for all runs, or one a run.
 * @param {any[][]} readings Readings of two runs or more, a column a run; each run's initial zero is taken off.
 * @returns {any} Fraction of rated output, 0 or more.
 * @formula worst of (greatest − least net reading of a row)/|RO|
 * @source ANSI/ISA-S37.1 vocabulary
 * @example =PROVE.REPEATABILITY({0;50;100},{0,0.01;1,1.012;2,2.01}) → 0.001
 */
export function repeatability(forces: any[][], readings: any[][]): any {
  return repeatabilityOf(readStatics(forces, readings));
}

/**
 * Zero return: change of the zero over a run, as a fraction of rated output.
 * @customfunction ZERORETURN
 * @group Static characteristics
 * @param {any[][]} forces Forces in the order applied, zero first and last; one column for all runs, or one a run.
 * @param {any[][]} readings Readings, a column a run.
 * @returns {any} Signed fraction of rated output; of several runs the worst.
 * @formula (last zero − first zero)/RO
 * @source ANSI/ISA-S37.1 vocabulary
 * @example =PROVE.ZERORETURN({0;50;100;0},{0.01;1.01;2.01;0.012}) → 0.001
 */
export function zeroReturn(forces: any[][], readings: any[][]): any {
  return zeroReturnOf(readStatics(forces, readings));
}

/**
 * Zero balance: output without load, as a fraction of rated output.
 * @customfunction ZEROBALANCE
 * @group Static characteristics
 * @param {any} zeroOutput Output without load, output units.
 * @param {any} ratedOutput Rated output, output units.
 * @returns {any} Signed fraction of rated output.
 * @formula zero output / RO
 * @source ANSI/ISA-S37.1 vocabulary
 * @example =PROVE.ZEROBALANCE(0.02,2) → 0.01
 */
export function zeroBalance(zeroOutput: any, ratedOutput: any): any {
  return readNumber(zeroOutput, 'zeroOutput') / readNonZero(ratedOutput, 'ratedOutput');
}

/**
 * Asymmetry between tension and compression, as a fraction of their mean output.
 * @customfunction ASYMMETRY
 * @group Static characteristics
 * @param {any} tensionOutput Net output at capacity in tension, output units.
 * @param {any} compressionOutput Net output at the same capacity in compression, output units, either sign.
 * @returns {any} Signed fraction: positive if tension gives more.
 * @formula (|T| − |C|)/((|T| + |C|)/2)
 * @source common practice, no source
 * @example =PROVE.ASYMMETRY(2.001,-1.999) → 0.001
 */
export function asymmetry(tensionOutput: any, compressionOutput: any): any {
  const tension = Math.abs(readNonZero(tensionOutput, 'tensionOutput'));
  const compression = Math.abs(readNonZero(compressionOutput, 'compressionOutput'));
  return (tension - compression) / ((tension + compression) / 2);
}
