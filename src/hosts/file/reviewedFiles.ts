/** What `npm run review` reviews files with: bundled to build/review.mjs. The engine that computes them again is a bundle of its own. */
import { recalculated, spilledOver } from '../../review/recalculated';
import { review, type ReviewOptions } from '../../review/review';
import type { Review } from '../../review/reviewFinding';
import type { ReadValue } from '../../worksheets/readSheet';
import { placeOf } from '../address';
import type { EngineCell } from '../grid/cellData';
import type { EngineSheet } from '../grid/engine';
import { type ReadSheet, readWorkbook } from './readWorkbook';

export { needsALook, reportCsv, reportCsvHead, reportSummary, reportText } from '../../review/report';

/** Computes the formulas of sheets, and lets what each cell then holds be used as long as `use` takes. */
export type Recalculate = <T>(sheets: readonly EngineSheet[], use: (value: (sheet: string, at: string) => ReadValue) => T) => Promise<T>;

/** Reviews a file (.xlsx), its formulas computed again if it has any. Throws if it is no workbook. */
export async function reviewFile(file: Uint8Array, recalculate: Recalculate, options: ReviewOptions = {}): Promise<Review> {
  const sheets = readWorkbook(file);
  const found = review(sheets, options);
  const hasFormulas = sheets.some(({ cells }) => cells.some(({ formula }) => formula !== undefined));
  if (!hasFormulas) return found;
  const known = new Set(found.findings.map(({ sheet, at, kind }) => `${sheet}!${at} ${kind}`));
  const differing = await recalculate(sheets.map(asEngineSheet), (value) => recalculated(sheets, value));
  const stale = differing.filter(({ sheet, at, kind }) => !known.has(`${sheet}!${at} ${kind}`));
  return { ...found, findings: [...found.findings, ...stale] };
}

/** A sheet as the engine computes it; what a formula spills into is left to it. */
function asEngineSheet({ name, cells, names }: ReadSheet): EngineSheet {
  const spilled = new Set(cells.flatMap(({ at, spill }) => (spill ? spilledOver(at, spill).slice(1) : [])));
  const rows: EngineCell[][] = [];
  for (const { at, value, formula } of cells) {
    if (spilled.has(at) && formula === undefined) continue;
    const { row, column } = placeOf(at);
    while (rows.length <= row) rows.push([]);
    while (rows[row].length <= column) rows[row].push(null);
    rows[row][column] = formula === undefined ? constant(value) : { formula };
  }
  return { name, cells: rows, ...(names ? { names } : {}) };
}

/** An error that stands as a constant is nothing to compute with. */
function constant(value: ReadValue): EngineCell {
  return typeof value === 'object' ? null : value;
}
