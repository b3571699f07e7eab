import type { FilledCell } from '../filledSheet';
import type { Entry } from '../plan';
import type { Target } from './target';

/** What turns the mean of a stretch into a reading of the sheet. */
export interface Scaling {
  /** From the unit of the channel to that of the readings; negative to turn the sign. */
  readonly factor: number;
  /** Readings are rounded to a multiple of it, as an instrument shows them; left as they are if undefined. */
  readonly step: number | undefined;
}

/** Digits that a computed mean is written with where no step is given. */
const DIGITS = 12;

/** A value of the log as a reading of the sheet, without the noise of binary fractions. */
export function readingOf(value: number, { factor, step }: Scaling): number {
  const scaled = value * factor;
  const rounded = step === undefined ? scaled : Math.round(scaled / step) * step;
  const clean = Number(rounded.toPrecision(DIGITS));
  return clean === 0 ? 0 : clean;
}

/** What filling a run does: the cells it writes, and those of them that hold something else now. */
export interface Filling {
  readonly entries: readonly Entry[];
  /** Cells that would lose what stands in them. */
  readonly overwritten: readonly FilledCell[];
}

/** Readings into the cells of a run; points without a reading keep what they have. */
export function fillingOf({ cells }: Target, readings: readonly (number | undefined)[]): Filling {
  const written = cells.flatMap((cell, row) => {
    const value = readings[row];
    return value === undefined ? [] : [{ cell, value }];
  });
  return {
    entries: written.map(({ cell: { at }, value }) => ({ at, value })),
    overwritten: written.filter(({ cell, value }) => cell.value !== null && cell.value !== value).map(({ cell }) => cell),
  };
}
