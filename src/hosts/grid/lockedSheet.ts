import type { Worksheet } from '@univerjs/core';
import { type CellPlace, isInside, rangeOf } from '../address';
import { readExtras } from './sheetExtras';

/** A sheet of which only some cells may be typed into. */
export class LockedSheet {
  private readonly open: readonly ReturnType<typeof rangeOf>[];

  constructor(readonly sheet: Worksheet, open: readonly string[]) {
    this.open = open.map(rangeOf);
  }

  /** Whether a cell may be typed into. */
  isOpen(place: CellPlace): boolean {
    return this.open.some((range) => isInside(place, range));
  }
}

/** The lock of a sheet; undefined if it has none. */
export function lockedSheet(sheet: Worksheet): LockedSheet | undefined {
  const { open } = readExtras(sheet);
  return open && new LockedSheet(sheet, open);
}
