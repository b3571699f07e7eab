import { numfmt } from '@univerjs/core';

/** A number, and the number format its spelling asks for, if any. */
export interface TypedNumber {
  readonly v: number;
  readonly z?: string;
}

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?\s*%?$/i;

/**
 * The number that typed or pasted text means: plain decimals, with an exponent or a percent sign or without. Null for everything
 * else, which stays text: a decimal comma would be taken for thousands, and 3-4 or 1/2 for a date.
 */
export function typedNumber(text: string): TypedNumber | null {
  const spelt = text.trim();
  if (!PLAIN.test(spelt)) return null;
  const parsed = numfmt.parseNumber(spelt) as TypedNumber | null;
  const number = parsed ?? { v: Number(spelt) };
  return Number.isFinite(number.v) ? number : null;
}
