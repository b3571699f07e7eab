import type { Entry } from '../worksheets/plan';
import { addressOf, type CellPlace, placeOf } from './address';
import { TEXT_LIMIT } from './excelLimits';

/** An entry whose cell and value were looked at: the value can stand in a cell of every host. */
export interface PlacedEntry extends CellPlace {
  /** Address without `$`. */
  readonly at: string;
  /** The constant; null empties the cell, and so does an empty text. */
  readonly value: string | number | boolean | null;
}

/**
 * The entries for a sheet, each with its place. Throws, naming the cell, on what is no address, on a cell named twice, and on
 * a value that a cell cannot hold; then nothing may be filled.
 */
export function placedEntries(sheet: string, entries: readonly Entry[]): readonly PlacedEntry[] {
  const taken = new Set<string>();
  return entries.map(({ at: typed, value }) => {
    const place = placeOf(typed);
    const at = addressOf(place);
    if (taken.has(at)) throw new Error(`'${sheet}'!${at}: found two entries for it; expected one`);
    taken.add(at);
    if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`'${sheet}'!${at}: found ${value}; expected a number that a cell can hold`);
    if (typeof value === 'string' && value.length > TEXT_LIMIT) {
      throw new Error(`'${sheet}'!${at}: found a text of ${value.length} letters; a cell holds ${TEXT_LIMIT} at most`);
    }
    return { ...place, at, value: value === '' ? null : value };
  });
}

/** Why a cell cannot be filled. */
export type Hindrance = { readonly kind: 'locked' } | { readonly kind: 'formula' } | { readonly kind: 'spill'; readonly source: string };

/** Throws, naming the first cell that cannot be filled and why. */
export function refuseHindered(sheet: string, entries: readonly PlacedEntry[], hindrance: (entry: PlacedEntry) => Hindrance | undefined): void {
  for (const entry of entries) {
    const found = hindrance(entry);
    if (found) throw new Error(`'${sheet}'!${entry.at}: ${wordsOf(found)}. Nothing was filled.`);
  }
}

function wordsOf(found: Hindrance): string {
  switch (found.kind) {
    case 'locked': return 'found a locked cell; expected one with a yellow ground';
    case 'formula': return 'found a formula; expected a cell for entries';
    case 'spill': return `found a result that the formula of ${found.source} spills into it; expected a cell for entries`;
  }
}
