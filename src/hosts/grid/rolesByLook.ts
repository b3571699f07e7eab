import { type IStyleData, WrapStrategy } from '@univerjs/core';
import type { CellRole } from '../../worksheets/plan';
import { ROLE_LOOKS } from '../roleLooks';
import { roleStyle } from './roleStyles';

const ROLES = Object.keys(ROLE_LOOKS) as CellRole[];
const BOTH = [true, false];

/** Roles by their whole look. Of two that look the same, the first: a file shows no difference. */
const EXACT = new Map<string, CellRole>();
/** Roles by what a person seldom changes: not by size, bold, italic and wrapping. */
const NEAR = new Map<string, CellRole>();

for (const role of ROLES) note(role, looksOf(role));
// Cells with room for several lines wrap, though others of their role do not.
for (const role of ROLES) note(role, [roleStyle({ role, lines: 1 })]);

function looksOf(role: CellRole): IStyleData[] {
  if (role !== 'header') return [roleStyle({ role })];
  return BOTH.flatMap((ruled) => BOTH.map((indented) => roleStyle({ role }, { side: 'left', ruled, indented })));
}

function note(role: CellRole, looks: readonly IStyleData[]): void {
  for (const look of looks) {
    if (!EXACT.has(exact(look))) EXACT.set(exact(look), role);
    if (!NEAR.has(near(look))) NEAR.set(near(look), role);
  }
}

/**
 * What a cell is for, told by its look, which moves and is copied with it. A look that was changed is taken for the nearest
 * one; a cell of no look of ours is a label: plain words or figures.
 */
export function roleOfLook(style: IStyleData = {}): CellRole {
  return EXACT.get(exact(style)) ?? NEAR.get(near(style)) ?? 'label';
}

/** Whether a cell wraps though others of its role do not. */
export function wrapsByItself(role: CellRole, style: IStyleData = {}): boolean {
  return style.tb === WrapStrategy.WRAP && !ROLE_LOOKS[role].wrapped;
}

function exact(style: IStyleData): string {
  const { fs, bl, it, tb } = style;
  return JSON.stringify([near(style), fs ?? null, bl ?? 0, it ?? 0, tb ?? 0]);
}

/** Ground, ink, lines, and how far the text stands off from the edge. */
function near({ bg, cl, bd, pd }: IStyleData): string {
  const edges = (['t', 'r', 'b', 'l'] as const).map((side) => bd?.[side]?.cl.rgb ?? '');
  return JSON.stringify([bg?.rgb ?? '', cl?.rgb ?? '', edges, pd?.l ?? 0]);
}
