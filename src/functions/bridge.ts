import { bridgeArms as armsOf, diagonals } from '../metrology/bridgeArms';
import { bridgeOutput as outputOf } from '../metrology/bridgeOutput';
import { summingOutput as summed } from '../metrology/summing';
import type { Cells } from './cells';
import { CellFault } from './faults';
import { isBlank, named, readList, readNonZero, readNumber, readPairs, readPositive } from './readCell';
import { readArms } from './readArms';
import { headed } from './table';

/**
 * Arm resistances of a bridge from the resistances between its corners.
 * @customfunction BRIDGEARMS
 * @group Condition of the bridge
 * @param {any} r12 Resistance between corners 1 and 2, ohms, nothing else connected; lead resistance taken off.
 * @param {any} r23 Resistance between corners 2 and 3, ohms.
 * @param {any} r34 Resistance between corners 3 and 4, ohms.
 * @param {any} r41 Resistance between corners 4 and 1, ohms.
 * @param {any} [r13] Resistance between corners 1 and 3 (input), ohms, to check the arms against.
 * @param {any} [r24] Resistance between corners 2 and 4 (output), ohms, to check the arms against.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} A row for each arm, ohms; with r13 or r24 a row more for each, as the arms imply it, and how far the measured one differs, as a signed fraction of it.
 * @formula r = R·(S − R)/S for each arm R between its corners r, S = sum of the arms; solved for S
 * @formula disagreement = (measured diagonal − diagonal of the arms)/diagonal of the arms
 * @source common practice, no source; derived from series and parallel resistances
 * @note Corners are numbered in order around the bridge: excitation on 1 (+) and 3 (−), signal on 4 (+) and 2 (−). Arm 1 lies between corners 1 and 2, arm 2 between 2 and 3, arm 3 between 3 and 4, arm 4 between 4 and 1.
 * @note An ideal bridge of 350 Ω reads 262.5 Ω between neighbouring corners, 350 Ω across a diagonal.
 * @note Resistors in the excitation leads inside the cell are not arms; they show as a disagreement of r13.
 * @example =PROVE.BRIDGEARMS(262.5,262.5,262.5,262.5,,,FALSE) → {"Arm 1",350;"Arm 2",350;"Arm 3",350;"Arm 4",350}
 */
export function bridgeArms(r12: any, r23: any, r34: any, r41: any, r13?: any, r24?: any, headers?: any): any[][] {
  const arms = armsOf([readPositive(r12, 'r12'), readPositive(r23, 'r23'), readPositive(r34, 'r34'), readPositive(r41, 'r41')]);
  const { input, output } = diagonals(arms);
  const across = [
    { name: 'Corners 1 and 3', implied: input, measured: isBlank(r13) ? undefined : readPositive(r13, 'r13') },
    { name: 'Corners 2 and 4', implied: output, measured: isBlank(r24) ? undefined : readPositive(r24, 'r24') },
  ].flatMap(({ name, implied, measured }) => (measured === undefined ? [] : [[name, implied, (measured - implied) / implied]]));
  const rows = arms.map((arm, i) => [`Arm ${i + 1}`, arm]);
  if (across.length === 0) return headed(['Between', 'Resistance'], rows, headers);
  return headed(['Between', 'Resistance', 'Disagreement'], [...rows.map((row) => [...row, '']), ...across], headers);
}

/**
 * Output without load that the arms of a bridge imply.
 * @customfunction BRIDGEOUTPUT
 * @group Condition of the bridge
 * @param {any[][]} arms Arms 1 to 4 in order around the bridge, ohms (see BRIDGEARMS); one column or row.
 * @returns {any} Zero output, mV/V: positive if arms 1 and 3 are the greater ones.
 * @formula 1000·(R1·R3 − R2·R4)/((R1 + R2)·(R3 + R4))
 * @source Wheatstone bridge
 * @note Excitation on corners 1 (+) and 3 (−), signal on 4 (+) and 2 (−). With the signal leads the other way round the sign is the other one.
 * @example =PROVE.BRIDGEOUTPUT({350.35;350;350;350}) → 0.24987506246876562
 */
export function bridgeOutput(arms: any[][]): any {
  return outputOf(readArms(arms));
}

/**
 * Change of the zero of a transducer, as a fraction of rated output.
 * @customfunction ZEROSHIFT
 * @group Condition of the bridge
 * @param {any} before Output without load before, output units.
 * @param {any} after Output without load after, output units.
 * @param {any} ratedOutput Rated output, output units, with its sign.
 * @returns {any} Signed fraction of rated output: positive if the zero moved the way the output moves under load.
 * @formula (after − before)/RO
 * @source common practice, no source
 * @example =PROVE.ZEROSHIFT(0.01,0.05,2) → 0.02
 */
export function zeroShift(before: any, after: any, ratedOutput: any): any {
  const output = readNonZero(ratedOutput, 'ratedOutput');
  return (readNumber(after, 'after') - readNumber(before, 'before')) / output;
}

/**
 * Output of cells joined in parallel in a junction box.
 * @customfunction SUMMINGOUTPUT
 * @group Condition of the bridge
 * @param {any[][]} outputs Output of each cell, mV/V; one column or row. A cell without load is joined all the same: give its zero.
 * @param {any[][]} [outputResistances] Output resistance of each cell with its lead and trim resistors, ohms; if left out all are equal.
 * @returns {any} Output of the box, mV/V.
 * @formula Σ(X/R)/Σ(1/R); the mean if the resistances are equal
 * @source parallel sources (superposition)
 * @example =PROVE.SUMMINGOUTPUT({1;2;1.5},{350;350;700}) → 1.5
 */
export function summingOutput(outputs: any[][], outputResistances?: any[][]): any {
  const cells = !outputResistances
    ? readList(outputs, 'outputs').flatMap(({ value }) => (value === undefined ? [] : [{ output: value, resistance: 1 }]))
    : readCells(outputs, outputResistances);
  if (cells.length === 0) throw new CellFault('#VALUE!', 'outputs: found nothing; expected an output for each cell');
  return summed(cells);
}

function readCells(outputs: Cells, resistances: Cells) {
  return readPairs(resistances, outputs, ['outputResistances', 'outputs'], 'resistance').map(({ place, first, second }) => {
    if (first > 0) return { output: second, resistance: first };
    throw new CellFault('#VALUE!', `${named('outputResistances', place)}: found ${first}; expected a number greater than 0`);
  });
}
