import { address } from '../worksheets/planBuilder';
import type { ReadSheet, ReadValue } from '../worksheets/readSheet';
import { sameValue } from '../worksheets/record/sameContent';
import { placeOf } from './reviewedSheet';
import { held } from './finding';
import type { ReviewFinding } from './reviewFinding';

/** Part of the greatest number in its row that a difference may be off by: what double precision leaves of a difference of like numbers. */
const NOISE = 1e-12;

/** A sheet of a file: a formula tells how far it spills. */
export interface StoredSheet extends ReadSheet {
  readonly cells: readonly (ReadSheet['cells'][number] & { readonly spill?: { readonly rows: number; readonly columns: number } })[];
}

/** Stored values of formulas that are not what the formulas give: of a file that was edited, or saved without being computed. `value` computes. */
export function recalculated(sheets: readonly StoredSheet[], value: (sheet: string, at: string) => ReadValue): ReviewFinding[] {
  return sheets.flatMap((sheet) => {
    const stored = new Map(sheet.cells.map((cell) => [cell.at, cell]));
    const greatest = greatestByRow(sheet);
    return sheet.cells.filter(({ formula }) => formula !== undefined).flatMap(({ at, spill }) => spilledOver(at, spill)).flatMap((at): ReviewFinding[] => {
      const [was, is] = [stored.get(at)?.value ?? null, value(sheet.name, at)];
      if (sameValue(was, is) || isNoise(was, is, greatest.get(placeOf(at).row) ?? 0)) return [];
      const format = stored.get(at)?.format;
      return [{ severity: 'wrong', kind: 'result', sheet: sheet.name, at, message: `${at} holds ${held(was, format)} in the file, and its formula gives ${held(is, format)}; expected the file to hold what it computes` }];
    });
  });
}

/** Cells that a formula spills into, its own first. */
export function spilledOver(at: string, spill: { readonly rows: number; readonly columns: number } = { rows: 1, columns: 1 }): string[] {
  const { column, row } = placeOf(at);
  return Array.from({ length: spill.rows * spill.columns }, (_, i) => address(column + (i % spill.columns), row + Math.floor(i / spill.columns)));
}

function greatestByRow({ cells }: StoredSheet): ReadonlyMap<number, number> {
  const greatest = new Map<number, number>();
  for (const { at, value } of cells) {
    if (typeof value !== 'number') continue;
    const { row } = placeOf(at);
    greatest.set(row, Math.max(greatest.get(row) ?? 0, Math.abs(value)));
  }
  return greatest;
}

function isNoise(was: ReadValue, is: ReadValue, scale: number): boolean {
  return typeof was === 'number' && typeof is === 'number' && Math.abs(was - is) <= NOISE * scale;
}
