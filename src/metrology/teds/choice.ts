import type { FieldType } from './fieldType';

/** One of several words, in any case; the code is its place in the list, from 0. */
export function choice(bits: number, words: readonly string[]): FieldType {
  return {
    bits,
    expected: `one of the words ${words.join(', ')}`,
    encode(value) {
      const word = typeof value === 'string' ? value.trim().toLowerCase() : undefined;
      const code = words.findIndex((candidate) => candidate.toLowerCase() === word);
      return code < 0 ? undefined : code;
    },
    decode: (code) => words[code],
  };
}
