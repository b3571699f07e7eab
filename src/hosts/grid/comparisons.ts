import { CELL_INVERTED_INDEX_CACHE } from '@univerjs/engine-formula';

/**
 * Lets no comparison of cells with a value be answered from the engine's index of values: it takes 0 for an empty text and the
 * text "12" for the number, so that A1="" would be true of a 0 from the second time on.
 */
export function mendComparisons(): void {
  CELL_INVERTED_INDEX_CACHE.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
  CELL_INVERTED_INDEX_CACHE.shouldContinueBuildingCache = () => false;
  CELL_INVERTED_INDEX_CACHE.setContinueBuildingCache = () => undefined;
  CELL_INVERTED_INDEX_CACHE.set = () => undefined;
}
