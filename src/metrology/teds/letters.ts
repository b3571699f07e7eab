import type { FieldType } from './fieldType';

const BITS = 5;
const BEFORE_A = 'A'.charCodeAt(0) - 1;

/**
 * Characters of 5 bits each (Chr5), the first in the lowest bits: code 0 is a blank, the rest is ASCII less 64, so 1 is A
 * and 26 is Z. Blanks at the end are not shown; small letters are kept as capitals.
 * @param last greatest character allowed: Z, or _ (code 31) where the standard allows every code
 */
export function letters(count: number, last: 'Z' | '_'): FieldType {
  const greatest = last.charCodeAt(0) - BEFORE_A;
  const codeOf = (character: string) => (character === ' ' ? 0 : character.charCodeAt(0) - BEFORE_A);
  return {
    bits: BITS * count,
    expected: `${count === 1 ? 'one letter' : `up to ${count} letters`} A to Z${last === '_' ? ' (or [ \\ ] ^ _)' : ''}, or a blank`,
    encode(value) {
      if (typeof value !== 'string' || value.length > count) return undefined;
      const codes = [...value].map((character) => codeOf(capital(character)));
      if (codes.some((code) => code < 0 || code > greatest)) return undefined;
      return codes.reduce((sum, code, i) => sum + code * 2 ** (BITS * i), 0);
    },
    decode(code) {
      const codes = Array.from({ length: count }, (_, i) => Math.floor(code / 2 ** (BITS * i)) % 2 ** BITS);
      if (codes.some((one) => one > greatest)) return undefined;
      return codes.map((one) => (one === 0 ? ' ' : String.fromCharCode(one + BEFORE_A))).join('').trimEnd();
    },
  };
}

/** Only a to z have a capital here: others, such as ß, would become two letters or another one. */
function capital(character: string): string {
  return /[a-z]/.test(character) ? character.toUpperCase() : character;
}
