import { noAnswer } from './errors';
import { neighboursInE96 } from './preferredValues';
import { seriesOutput, seriesResistor, shuntOutput, shuntResistor } from './shunt';

/** One way to trim the zero of a bridge. Arms are numbered as for `Arms`. */
export interface Trim {
  readonly method: 'across' | 'in series';
  /** Either one of these arms. */
  readonly arms: readonly [number, number];
  /** Ohms. */
  readonly resistor: number;
  /** Zero with that resistor, mV/V. */
  readonly zero: number;
  /** The E96 resistor whose zero comes nearest to the target, ohms. */
  readonly standard: number;
  /** Zero with the standard resistor, mV/V. */
  readonly standardZero: number;
}

/**
 * Resistors that bring the zero of a bridge to a target, across an arm or in series with one, exact and from the E96 series.
 * To raise the output: across arm 2 or 4, or in series with arm 1 or 3; to lower it the other way round. The two arms of the
 * half that is trimmed (1 and 2, or 3 and 4) are taken as equal to `arm`; the other half may be as it is.
 * Source: Wheatstone bridge; IEC 60063 for the series.
 *
 * @param zero output without load, mV/V
 * @param arm arm resistance, ohms, greater than 0
 * @param target zero to reach, mV/V
 * @throws MetrologyError (no answer) if the zero is at the target, or the change is 500 mV/V or more
 */
export function zeroTrims(zero: number, arm: number, target = 0): [Trim, Trim] {
  const change = target - zero;
  if (change === 0) throw noAnswer(`the zero is at the target, ${target} mV/V: no resistor is needed`);
  const direction = Math.sign(change);
  const trim = (method: Trim['method'], raising: Trim['arms'], resistorFor: typeof shuntResistor, outputOf: typeof shuntOutput): Trim => {
    const resistor = resistorFor(arm, Math.abs(change));
    const zeroWith = (value: number) => zero + direction * outputOf(arm, value);
    const miss = (value: number) => Math.abs(zeroWith(value) - target);
    const [below, above] = neighboursInE96(resistor);
    const standard = miss(below) <= miss(above) ? below : above;
    return {
      method, resistor, standard, zero: zeroWith(resistor), standardZero: zeroWith(standard),
      arms: direction > 0 ? raising : OTHER_ARMS[raising[0]],
    };
  };
  return [trim('across', [2, 4], shuntResistor, shuntOutput), trim('in series', [1, 3], seriesResistor, seriesOutput)];
}

const OTHER_ARMS: Readonly<Record<number, Trim['arms']>> = { 1: [2, 4], 2: [1, 3] };
