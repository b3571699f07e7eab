import { converter, UNITS } from '../../metrology/units';

/** Units of a bridge output as loggers write them, in mV/V. */
const OUTPUTS: Readonly<Record<string, number>> = { 'mV/V': 1, 'µV/V': 1e-3, 'μV/V': 1e-3, 'uV/V': 1e-3, 'V/V': 1e3 };

/** What turns values of one unit into another; undefined if one of them is unknown, or they are of different kinds. */
export function unitFactor(from: string | undefined, to: string | undefined): number | undefined {
  if (!from || !to) return undefined;
  if (from === to) return 1;
  if (from in OUTPUTS && to in OUTPUTS) return Number((OUTPUTS[from] / OUTPUTS[to]).toPrecision(15));
  const [a, b] = [from, to].map((symbol) => UNITS.find((unit) => unit.symbol === symbol));
  return a && b && a.kind === b.kind ? converter(a, b)(1) : undefined;
}
