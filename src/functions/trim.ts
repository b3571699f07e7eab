import { shuntOutput as shuntOutputOf, shuntResistor as shuntResistorOf } from '../metrology/shunt';
import { zeroTrims } from '../metrology/zeroTrim';
import { readNumber, readPositive } from './readCell';
import { headed } from './table';

/**
 * Output that a shunt resistor across one arm makes (shunt calibration).
 * @customfunction SHUNTOUTPUT
 * @group Condition of the bridge
 * @param {any} armR Resistance of an arm, ohms: the four arms are taken as equal.
 * @param {any} shuntR Shunt resistor, ohms.
 * @returns {any} Size of the output, mV/V: it rises with the shunt across arm 2 or 4, falls with it across arm 1 or 3.
 * @formula 1000·R/(4·Rs + 2·R)
 * @source Wheatstone bridge
 * @note It repeats a simulated output of the same transducer and leads; it is no calibration.
 * @example =PROVE.SHUNTOUTPUT(1000,249500) → 1
 */
export function shuntOutput(armR: any, shuntR: any): any {
  return shuntOutputOf(readPositive(armR, 'armR'), readPositive(shuntR, 'shuntR'));
}

/**
 * Shunt resistor across one arm that makes a given output.
 * @customfunction SHUNTRESISTOR
 * @group Condition of the bridge
 * @param {any} armR Resistance of an arm, ohms: the four arms are taken as equal.
 * @param {any} mVV Size of the output, mV/V, greater than 0.
 * @returns {any} Shunt resistor, ohms; #N/A from 500 mV/V, which a short makes.
 * @formula R·(1000/x − 2)/4
 * @source Wheatstone bridge
 * @example =PROVE.SHUNTRESISTOR(1000,1) → 249500
 */
export function shuntResistor(armR: any, mVV: any): any {
  return shuntResistorOf(readPositive(armR, 'armR'), readPositive(mVV, 'mVV'));
}

/**
 * Resistors that bring the zero of a bridge to a target: across an arm, or in series with one.
 * @customfunction ZEROTRIM
 * @group Condition of the bridge
 * @param {any} zero Output without load, mV/V.
 * @param {any} armR Resistance of an arm, ohms: the two arms of the half that is trimmed (1 and 2, or 3 and 4) are taken as equal to it.
 * @param {any} [target] Zero to reach, mV/V; 0 if left out.
 * @param {any} [headers] FALSE leaves out the header row; TRUE (default) shows it.
 * @returns {any[][]} Two rows, across an arm and in series: which arm, resistor (ohms), zero with it (mV/V), nearest E96 resistor (ohms), zero with that (mV/V); #N/A if the zero is at the target.
 * @formula across: R·(1000/|x| − 2)/4; in series: 4·R/(1000/|x| − 2); x = target − zero
 * @formula nearest E96 resistor: the one whose zero comes nearest to the target
 * @source Wheatstone bridge; IEC 60063 for the E96 series
 * @note To raise the output: across arm 2 or 4, or in series with 1 or 3. To lower it: across 1 or 3, or in series with 2 or 4. Arms and sign as for BRIDGEARMS and BRIDGEOUTPUT.
 * @note A trim changes the span a little, and the temperature effect on zero: use a resistor of low temperature coefficient. A trimmed transducer is out of calibration until it is run again.
 * @note The E96 series goes below 1 Ω on paper; a length of wire is the usual series resistor there.
 * @example =PROVE.ZEROTRIM(0.5,350,0,FALSE) → {"across","1 or 3",174825,0,174000,-0.00236830773647;"in series","2 or 4",0.700700700701,0,0.698,0.00192522313465}
 */
export function zeroTrim(zero: any, armR: any, target?: any, headers?: any): any[][] {
  const trims = zeroTrims(readNumber(zero, 'zero'), readPositive(armR, 'armR'), readNumber(target, 'target', 0));
  const rows = trims.map(({ method, arms, resistor, zero: exact, standard, standardZero }) =>
    [method, arms.join(' or '), resistor, exact, standard, standardZero]);
  return headed(['Resistor', 'Arm', 'Ohms', 'Zero', 'E96 ohms', 'Zero with E96'], rows, headers);
}
