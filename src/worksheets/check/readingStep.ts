import type { Block } from '../block';
import type { RunSheet } from './runSheet';

/** More decimals than an instrument shows: a computed reading, which has no step. */
const MOST_DECIMALS = 9;

/**
 * The least difference that two readings of a block can have, in output units: the resolution that the sheet states, or the
 * last decimal that any reading has, whichever is coarser. 0 if neither tells.
 */
export function readingStep(sheet: RunSheet, block: Block): number {
  const values = block.runs.flat().flatMap(({ value }) => (typeof value === 'number' ? [value] : []));
  const decimals = values.reduce((most, value) => Math.max(most, decimalsOf(value)), 0);
  const lastDecimal = values.length === 0 || decimals > MOST_DECIMALS ? 0 : 10 ** -decimals;
  return Math.max(sheet.cells.number('resolution') ?? 0, lastDecimal);
}

function decimalsOf(value: number): number {
  const [digits, exponent = '0'] = String(value).toLowerCase().split('e');
  return Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(exponent));
}
