import { appliedUnitOf } from '../appliedUnit';
import type { FilledSheet } from '../filledSheet';

/** Units that end in a length are those of a torque: N·m, lbf·in, lbf·ft. */
const TORQUE = /[·.*⋅-]\s*(m|cm|mm|in|ft)$/i;
/** A ratio of voltages is a signal. */
const SIGNAL = /V$/;

/** "Force, kN", "Torque, N·m", "Signal, mV/V": the axis of what is applied; where the unit tells nothing, "Applied". */
export function appliedAxis(sheet: FilledSheet): string {
  const { unit } = appliedUnitOf(sheet);
  if (!unit) return 'Applied';
  if (sheet.cell('scale')) return labelled('Expected', unit);
  return labelled(SIGNAL.test(unit) ? 'Signal' : TORQUE.test(unit) ? 'Torque' : 'Force', unit);
}

/** A quantity in output units. */
export function outputAxis(sheet: FilledSheet, quantity: string): string {
  return labelled(quantity, sheet.text('output_unit'));
}

/** A quantity in the unit of what is applied. */
export function appliedUnitAxis(sheet: FilledSheet, quantity: string): string {
  return labelled(quantity, appliedUnitOf(sheet).unit);
}

function labelled(quantity: string, unit: string | undefined): string {
  return unit ? `${quantity}, ${unit}` : quantity;
}
