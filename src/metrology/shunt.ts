import { noAnswer } from './errors';

/**
 * Size of the output, mV/V, that a resistor across one arm of an equal-arm bridge makes: 1000·R/(4·Rs + 2·R). Across arm 2 or 4
 * it is positive, across arm 1 or 3 negative. Source: Wheatstone bridge.
 */
export function shuntOutput(arm: number, shunt: number): number {
  return 1000 / (4 * (shunt / arm) + 2);
}

/** Output that no resistor can reach: it is that of an arm shorted or cut, mV/V. */
export const UTMOST_OUTPUT = 500;

/**
 * Resistor, ohms, that makes an output of the given size across one arm of an equal-arm bridge: R·(1000/x − 2)/4.
 * @param output mV/V, greater than 0
 * @throws MetrologyError (no answer) if the output is 500 mV/V or more, which a short across the arm gives
 */
export function shuntResistor(arm: number, output: number): number {
  requireReachable(output);
  return (arm * (1000 / output - 2)) / 4;
}

/**
 * Size of the output, mV/V, that a resistor in series with one arm of an equal-arm bridge makes: 1000·Rz/(4·R + 2·Rz). In
 * arm 1 or 3 it is positive, in arm 2 or 4 negative. Source: Wheatstone bridge.
 */
export function seriesOutput(arm: number, series: number): number {
  return 1000 / (4 * (arm / series) + 2);
}

/**
 * Resistor, ohms, that makes an output of the given size in series with one arm: 4·R/(1000/x − 2).
 * @param output mV/V, greater than 0
 * @throws MetrologyError (no answer) if the output is 500 mV/V or more, which a cut arm gives
 */
export function seriesResistor(arm: number, output: number): number {
  requireReachable(output);
  return (4 * arm) / (1000 / output - 2);
}

function requireReachable(output: number): void {
  if (output < UTMOST_OUTPUT) return;
  throw noAnswer(`no resistor makes ${output} mV/V: one arm shorted or cut makes ${UTMOST_OUTPUT} mV/V`);
}
