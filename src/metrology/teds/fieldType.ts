/** A value of a field as people write it: a number, or text for words, letters and dates. */
export type FieldValue = number | string;

/** How a field's values are kept as codes of so many bits. */
export interface FieldType {
  readonly bits: number;
  /** What a cell may hold, with the range, as messages say it. */
  readonly expected: string;
  /** The code of a value; undefined if the field cannot hold it. */
  encode(value: FieldValue): number | undefined;
  /** The value of a code; undefined if the code stands for none. */
  decode(code: number): FieldValue | undefined;
}

/** What stands in a cell where the memory holds all ones: the maker gave no value. From memory of IEEE 1451.4. */
export const NOT_STATED = 'not stated';

/** True for the words that stand for all ones, in any case. */
export function isNotStated(value: FieldValue): boolean {
  return typeof value === 'string' && value.trim().toLowerCase() === NOT_STATED;
}

/** The code of `bits` ones. */
export function allOnes(bits: number): number {
  return 2 ** bits - 1;
}
