import { takeBits } from './bits';
import type { FieldValue } from './fieldType';
import { LAYOUT, type PlacedField } from './layout';

const MEASURAND = LAYOUT.find(({ name }) => name === 'PhysicalMeasurand')!;

/** The value of a field in the memory; undefined if its code stands for none. */
export function valueIn(bytes: Uint8Array, field: PlacedField): FieldValue | undefined {
  return field.type.decode(takeBits(bytes, field.offset, field.type.bits));
}

/** Unit of a field's value, "" if it has none; that of the physical values is what the memory names as its measurand. */
export function unitOf(field: PlacedField, bytes: Uint8Array): string {
  return field.unit === 'measurand' ? String(valueIn(bytes, MEASURAND)) : field.unit ?? '';
}
