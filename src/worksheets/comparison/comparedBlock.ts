import { shown } from '../shown';
import { pairRows } from './pairRows';
import { appliedOf, isIndication, type RunSide, sideId, sideWords } from './runSide';

/** A block as found, with what belongs to it as left. */
export interface ComparedBlock {
  /** Ends its names, like "tension". */
  readonly id: string;
  /** The same in words. */
  readonly words: string;
  readonly found: RunSide;
  /** Undefined if nothing was adjusted. */
  readonly left?: RunSide;
  /** For each row as found the row of the same point as left; undefined where it has none. */
  readonly pairs: readonly (number | undefined)[];
  /** True if the nominal value of a point is what is applied itself. */
  readonly indication: boolean;
  /** Row of the greatest force, the first of them, from 0. */
  readonly top: number;
}

/** Blocks side by side, and what speaks for or against that in words. */
export interface Compared {
  readonly blocks: readonly ComparedBlock[];
  readonly refused: readonly string[];
  readonly warnings: readonly string[];
}

/** Brings the blocks of two runs together by what they are of; `left` is undefined if nothing was adjusted. */
export function comparedBlocks(found: readonly RunSide[], left: readonly RunSide[] | undefined): Compared {
  const blocks: ComparedBlock[] = [];
  const [refused, warnings]: [string[], string[]] = [[], []];
  for (const side of found) {
    const other = left?.find((candidate) => sideId(candidate) === sideId(side)) ?? (left?.length === 1 && found.length === 1 ? left[0] : undefined);
    if (left && !other) {
      refused.push(`Found ${sideWords(side)} on “${side.sheet}”, but not on “${left[0].sheet}”; expected a run of the same directions. Run it as left too`);
      continue;
    }
    const block = compare(side, other);
    blocks.push(block);
    if (!other) continue;
    if (block.pairs.every((pair) => pair === undefined)) refused.push(`Found no point of “${side.sheet}”, ${block.words}, on “${other.sheet}”; expected runs of the same points`);
    else warnings.push(...unpaired(block, side, other));
  }
  const alone = (left ?? []).filter((other) => !blocks.some((block) => block.left === other));
  warnings.push(...alone.map((other) => `Found ${sideWords(other)} on “${other.sheet}” only; it is not compared`));
  return { blocks, refused, warnings };
}

function compare(found: RunSide, left: RunSide | undefined): ComparedBlock {
  const applied = appliedOf(found);
  const sizes = applied.map((value) => Math.abs(value ?? 0));
  return {
    id: sideId(found), words: sideWords(found), found, ...(left ? { left } : {}), indication: isIndication(found), top: sizes.indexOf(Math.max(...sizes)),
    pairs: left ? pairRows(applied, appliedOf(left)) : applied.map((_, i) => i),
  };
}

function unpaired({ pairs, words }: ComparedBlock, found: RunSide, left: RunSide): string[] {
  const forces = (side: RunSide, rows: readonly number[]) => rows.map((row) => appliedOf(side)[row]).map((force) => (force === undefined ? '?' : shown(force))).join(', ');
  const only = (side: RunSide, rows: readonly number[]) => (rows.length === 0 ? [] : [`${words}: found the ${rows.length === 1 ? 'point' : 'points'} ${forces(side, rows)} on “${side.sheet}” only; no shift is told there`]);
  return [
    ...only(found, pairs.flatMap((pair, row) => (pair === undefined ? [row] : []))),
    ...only(left, left.block.applied.flatMap((_, row) => (pairs.includes(row) ? [] : [row]))),
  ];
}
