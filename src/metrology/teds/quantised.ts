import { allOnes, type FieldType, type FieldValue, isNotStated, NOT_STATED } from './fieldType';

/** Share of a step by which a computed value may miss the ends of the range. */
const SLACK = 1e-6;

/**
 * Constant resolution (ConRes): value = start + step·code. A value is kept as the nearest code, so within half a step.
 * All ones mean that no value is stated (from memory). Source: IEEE 1451.4.
 */
export function constantStep(bits: number, start: number, step: number): FieldType {
  const last = allOnes(bits) - 1;
  const valueOf = (code: number) => rounded(start + step * code);
  return quantised(bits, `a number from ${start} to ${valueOf(last)} (kept in steps of ${step})`, (value) => (value - start) / step, valueOf);
}

/**
 * Constant relative resolution (ConRelRes): value = start·(1 + 2·tolerance)^code. A value is kept as the code nearest by
 * ratio. All ones mean that no value is stated (from memory). Source: IEEE 1451.4.
 */
export function constantRatio(bits: number, start: number, tolerance: number): FieldType {
  const last = allOnes(bits) - 1;
  const ratio = 1 + 2 * tolerance;
  const valueOf = (code: number) => rounded(start * ratio ** code);
  return quantised(
    bits, `a number from ${start} to ${valueOf(last)} (kept in steps of a factor ${ratio})`,
    (value) => Math.log(value / start) / Math.log(ratio), valueOf,
  );
}

/**
 * A field whose codes rise with its values, all ones excepted.
 * @param placeOf code of a value as a real number, before it is rounded
 */
function quantised(bits: number, range: string, placeOf: (value: number) => number, valueOf: (code: number) => number): FieldType {
  const unstated = allOnes(bits);
  return {
    bits,
    expected: `${range}, or "${NOT_STATED}"`,
    encode(value: FieldValue) {
      if (isNotStated(value)) return unstated;
      if (typeof value !== 'number') return undefined;
      const place = placeOf(value);
      return place >= -SLACK && place <= unstated - 1 + SLACK ? Math.round(place) : undefined;
    },
    decode: (code) => (code === unstated ? NOT_STATED : valueOf(code)),
  };
}

/** Without the last digits of binary arithmetic: 0.1 + 0.1·24 is 2.5, not 2.5000000000000004. */
function rounded(value: number): number {
  return Number(value.toPrecision(12));
}
