import type { FieldType } from './fieldType';
import { wholeNumber } from './wholeNumber';

/** One field of the memory, in the order of its bits. */
export interface Field {
  readonly name: string;
  readonly type: FieldType;
  /** Unit of the value; "measurand" stands for the unit that the field PhysicalMeasurand names. */
  readonly unit?: string;
  /** Set in a field that steers the reading and so can hold this number only: it need not be filled in. */
  readonly only?: number;
  /** What another number would mean, for the message. */
  readonly otherwise?: string;
}

/** A field that can hold one number only, such as the number of the template. */
export function steering(name: string, bits: number, only: number, otherwise: string): Field {
  return { name, only, otherwise, type: { ...wholeNumber(bits, only, only), expected: String(only) } };
}
