import { allOnes, type FieldType, isNotStated, NOT_STATED } from './fieldType';

const BITS = 32;
/** Below this, singles lose digits. */
const LEAST_NORMAL = 2 ** -126;
/** Half a unit in the last place of a single, as a share of the value. */
const ROUNDING = 2 ** -24;

/**
 * IEEE 754 single precision. A value is kept as the nearest single, within 6E-8 of itself; one so small that a single
 * would cut digits off is refused. Minus zero is read as 0. All ones mean that no value is stated (from memory).
 */
export const single: FieldType = {
  bits: BITS,
  expected: `0 or a number of magnitude 1.2E-38 to 3.4E+38, or "${NOT_STATED}"`,
  encode(value) {
    if (isNotStated(value)) return allOnes(BITS);
    if (typeof value !== 'number') return undefined;
    const kept = Math.fround(value);
    if (!Number.isFinite(kept) || Math.abs(kept - value) > ROUNDING * Math.abs(value)) return undefined;
    return new Uint32Array(new Float32Array([withoutSignOfZero(kept)]).buffer)[0];
  },
  decode(code) {
    if (code === allOnes(BITS)) return NOT_STATED;
    const value = new Float32Array(new Uint32Array([code]).buffer)[0];
    return Number.isFinite(value) ? withoutSignOfZero(shortest(value)) : undefined;
  },
};

function withoutSignOfZero(value: number): number {
  return value === 0 ? 0 : value;
}

/** The number of fewest digits that is kept as this single: 0.1, not 0.10000000149011612. */
function shortest(value: number): number {
  if (Math.abs(value) < LEAST_NORMAL) return value;
  for (let digits = 1; digits < 9; digits += 1) {
    const short = Number(value.toPrecision(digits));
    if (Math.fround(short) === value) return short;
  }
  return Number(value.toPrecision(9));
}
