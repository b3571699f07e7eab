import { type Block, blocksOf } from '../block';
import { type FilledCell, FilledSheet } from '../filledSheet';
import { address } from '../planBuilder';
import { appliedUnitOf } from '../appliedUnit';
import type { ReadSheet } from '../readSheet';

/** A run of a block that readings can be filled into. */
export interface Target {
  readonly block: Block;
  /** Index of the run in the block. */
  readonly run: number;
  /** As the sheet heads it, like "Run 2, 120°". */
  readonly label: string;
  /** A cell a point, with what stands there. */
  readonly cells: readonly FilledCell[];
  /** What was applied at each point, or after how many minutes it is read; undefined where the sheet does not say. */
  readonly applied: readonly (number | undefined)[];
  /** Unit of what was applied; minutes of a record over time. */
  readonly appliedUnit: string;
}

/** What a sheet says about readings to be filled in. */
export interface TargetSheet {
  readonly targets: readonly Target[];
  readonly outputUnit: string | undefined;
  /** The least step of a reading, if the sheet states one. */
  readonly resolution: number | undefined;
}

/** The runs of a sheet, block by block. */
export function targetsOf(read: ReadSheet): TargetSheet {
  const sheet = new FilledSheet(read);
  const values = new Map(read.cells.map(({ at, value }) => [at, value]));
  const unit = appliedUnitOf(sheet).unit ?? '';
  const resolution = sheet.number('resolution');
  return {
    targets: blocksOf(sheet).flatMap((block) => block.runs.map((cells, run): Target => ({
      block, run, cells,
      label: headAbove(values, cells[0]) ?? `Run ${run + 1}`,
      applied: block.applied.map(({ value }) => (typeof value === 'number' ? value : undefined)),
      appliedUnit: block.over === 'times' ? 'min' : unit,
    }))),
    outputUnit: sheet.text('output_unit'),
    resolution: resolution !== undefined && resolution > 0 ? resolution : undefined,
  };
}

/** Rows that a head may stand above its first reading. */
const HEAD_ROWS = 3;

/** The texts right above a cell, the topmost first, without the unit right above it. */
function headAbove(values: ReadonlyMap<string, unknown>, { column, row }: FilledCell): string | undefined {
  const texts: string[] = [];
  for (let above = row - 1; above >= Math.max(1, row - HEAD_ROWS); above -= 1) {
    const value = values.get(address(column, above));
    if (typeof value === 'string') texts.unshift(value);
  }
  const heads = texts.slice(0, -1).filter((text) => text.trim() !== '');
  return heads.length > 0 ? heads.join(', ') : undefined;
}
