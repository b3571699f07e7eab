import type { PlanCell, SheetPlan } from '../worksheets/plan';
import { addressOf, placeOf, rangeOf } from './address';
import { lineCount, linesHeight } from './textSize';
import { BASE_SIZE, ROLE_LOOKS } from './roleLooks';

/** Pixels of a row and a column of which nothing is said. */
export const ROW_HEIGHT = 22;
export const COLUMN_WIDTH = 84;
const CHARACTER_WIDTH = 7.5;
const CELL_PADDING = 8;
/** Pixels of a row above and below its text. */
const ROW_ROOM = 6;
/** Pixels that fit on an upright page about as they are on the screen; wider sheets are laid across. */
const PORTRAIT_WIDTH = 800;

/** What a table head takes from what stands below it. */
export interface HeadLook {
  /** The side its text stands on. */
  readonly side: 'left' | 'right' | 'center';
  /** False if another line of the head follows, so that no line is drawn between. */
  readonly ruled: boolean;
  /** True if what stands below is indented. */
  readonly indented: boolean;
}

/** A table head stands over its column: right over numbers and results, left over words, in the middle over verdicts. */
export function headLook(cell: PlanCell, cells: ReadonlyMap<string, PlanCell>): HeadLook | undefined {
  if (cell.role !== 'header') return undefined;
  const { row, column } = placeOf(cell.at);
  const below = (steps: number): PlanCell | undefined => cells.get(addressOf({ row: row + steps, column }));
  let steps = 1;
  while (below(steps)?.role === 'header') steps += 1;
  const body = below(steps);
  const { centered = false, indented = false } = body ? ROLE_LOOKS[body.role] : {};
  const words = indented || body?.role === 'label' || (body?.role === 'input' && body.lines !== undefined) || typeof body?.value === 'string';
  return { side: centered ? 'center' : words ? 'left' : 'right', indented, ruled: steps === 1 };
}

/** Width of a column of so many characters, in pixels. */
export function columnPixels(characters: number): number {
  return Math.round(characters * CHARACTER_WIDTH + CELL_PADDING);
}

/** How many characters a column of so many pixels takes: a whole number if one has that width. */
export function columnCharacters(pixels: number): number {
  const characters = (pixels - CELL_PADDING) / CHARACTER_WIDTH;
  const whole = Math.round(characters);
  return columnPixels(whole) === pixels ? whole : Math.max(0, characters);
}

/** How many lines of the base size have room in a row of so many pixels. */
export function linesIn(pixels: number): number {
  let lines = 1;
  while (linesHeight(lines + 1, BASE_SIZE) + ROW_ROOM <= pixels) lines += 1;
  return lines;
}

/** Width of the columns from first to last (from 0), in pixels. */
export function widthOf(plan: SheetPlan, first: number, last: number): number {
  let width = 0;
  for (let column = first; column <= last; column += 1) {
    const characters = plan.columns[column];
    width += characters === undefined ? COLUMN_WIDTH : columnPixels(characters);
  }
  return width;
}

/** Whether a sheet prints across the page: as its plan says, else if it is too wide for an upright one. */
export function isLandscape(plan: SheetPlan): boolean {
  return plan.print?.landscape ?? widthOf(plan, 0, plan.columns.length - 1) > PORTRAIT_WIDTH;
}

/** Height in pixels of each row (from 0) that holds anything: high enough for the whole text of every wrapped or large cell in it. */
export function rowHeights(plan: SheetPlan): ReadonlyMap<number, number> {
  const merges = (plan.merges ?? []).map(rangeOf);
  const heights = new Map<number, number>();
  const shared = new Set(plan.cells.filter(({ role }) => role !== 'heading').map(({ at }) => placeOf(at).row));
  for (const cell of plan.cells) {
    const { row, column } = placeOf(cell.at);
    const merge = merges.find((range) => range.startRow === row && range.startColumn === column);
    if (merge && merge.endRow > row) continue;
    const { size = BASE_SIZE, wrapped = false, bold = false } = ROLE_LOOKS[cell.role];
    const width = widthOf(plan, column, merge?.endColumn ?? column) - CELL_PADDING;
    const wraps = wrapped || cell.lines !== undefined;
    const lines = Math.max(cell.lines ?? 1, wraps && typeof cell.value === 'string' ? lineCount(cell.value, width, size, bold) : 1);
    // A heading stands off from what is above it, unless a table beside it goes on.
    const room = cell.role === 'heading' && !shared.has(row) ? 14 : ROW_ROOM;
    heights.set(row, Math.max(heights.get(row) ?? ROW_HEIGHT, linesHeight(lines, size) + room));
  }
  return heights;
}
