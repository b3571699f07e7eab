import type { FieldType } from './fieldType';

/** Unsigned whole number, its code being the number itself (UNINT). */
export function wholeNumber(bits: number, least: number, greatest: number): FieldType {
  const inRange = (value: unknown): value is number => Number.isInteger(value) && (value as number) >= least && (value as number) <= greatest;
  return {
    bits,
    expected: `a whole number from ${least} to ${greatest}`,
    encode: (value) => (inRange(value) ? value : undefined),
    decode: (code) => (inRange(code) ? code : undefined),
  };
}
