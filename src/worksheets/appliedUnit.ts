import type { FilledSheet } from './filledSheet';

/**
 * What the applied values of a sheet are in. Where a simulator feeds an indicator, the sheet has a scale, and the applied
 * values are what should be indicated: the signal times the scale, in output units.
 */
export interface AppliedUnit {
  /** Undefined if the sheet does not say. */
  readonly unit: string | undefined;
  /** Applied values per unit of the signal; 1 without a scale. */
  readonly scale: number;
}

export function appliedUnitOf(sheet: FilledSheet): AppliedUnit {
  const scale = sheet.number('scale');
  return scale === undefined ? { unit: sheet.text('unit'), scale: 1 } : { unit: sheet.text('output_unit'), scale };
}
