import type { FilledCell } from '../../worksheets/filledSheet';

/** What a cell should hold by the independent path. */
export interface Expected {
  readonly cell: FilledCell;
  /** A number, a word, or null where nothing is to be told yet. */
  readonly value: number | string | null;
  /** What rounding errors are measured against besides the value itself, like the output for a difference of outputs. */
  readonly scale: number;
  /** True where values of either sign are as great, so that rounding decides which is told. */
  readonly eitherSign?: boolean;
  /** Part of the value that it may differ by; {@link RELATIVE} if omitted. */
  readonly relative?: number;
}

/** Two ways to compute the same agree to this part of the value. */
export const RELATIVE = 1e-9;
/** And to this part of the scale: what double precision leaves of a difference of like numbers, with room. */
const OF_SCALE = 1e-12;

/** Whether a cell holds what it should. */
export function agrees({ cell, value, scale, eitherSign, relative = RELATIVE }: Expected): boolean {
  const found = cell.value;
  if (typeof value !== 'number' || typeof found !== 'number') return found === value;
  const most = relative * Math.abs(value) + OF_SCALE * Math.abs(scale);
  return Math.abs(found - value) <= most || (eitherSign === true && Math.abs(found + value) <= most);
}

/** Of several signed values the one of largest magnitude, and whether another sign is as large. */
export function worst(values: readonly number[]): { readonly value: number; readonly eitherSign: boolean } {
  const value = values.reduce((most, one) => (Math.abs(one) > Math.abs(most) ? one : most), 0);
  return { value, eitherSign: values.some((one) => Math.sign(one) === -Math.sign(value) && Math.abs(one + value) <= RELATIVE * Math.abs(value) + OF_SCALE) };
}
