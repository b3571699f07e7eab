import { BASIC_FIELDS } from './basic';
import { BRIDGE_SENSOR_FIELDS } from './bridgeSensor';
import type { Field } from './field';

/** A field with the place of its first bit. */
export interface PlacedField extends Field {
  readonly offset: number;
}

/** All fields of basic TEDS and template 33, each behind the one before. */
export const LAYOUT: readonly PlacedField[] = placed([...BASIC_FIELDS, ...BRIDGE_SENSOR_FIELDS]);

/** Length of the whole in bytes. */
export const LAYOUT_BYTES = Math.ceil(endOf(LAYOUT[LAYOUT.length - 1]) / 8);

function placed(fields: readonly Field[]): PlacedField[] {
  let offset = 0;
  return fields.map((field) => {
    const here = { ...field, offset };
    offset = endOf(here);
    return here;
  });
}

function endOf(field: PlacedField): number {
  return field.offset + field.type.bits;
}
