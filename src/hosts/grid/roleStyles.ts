import { BooleanNumber, BorderStyleTypes, HorizontalAlign, type IStyleData, VerticalAlign, WrapStrategy } from '@univerjs/core';
import type { CellRole } from '../../worksheets/plan';

/** Size of text in points; everything else is set relative to it. */
export const BASE_SIZE = 10;
export const FONT = 'Arial';

const INK = '#1d2733';
const MUTED = '#5a6672';
const TEAL = '#0b6e6e';
const LINE = '#d5d9dc';

const color = (rgb: string) => ({ rgb });
const edge = (rgb: string, style = BorderStyleTypes.THIN) => ({ s: style, cl: color(rgb) });
const box = (rgb: string) => ({ t: edge(rgb), r: edge(rgb), b: edge(rgb), l: edge(rgb) });

/** What a cell looks like if nothing else is said. */
export const BASE_STYLE: IStyleData = { ff: FONT, fs: BASE_SIZE, cl: color(INK), vt: VerticalAlign.TOP, pd: { t: 3 } };

/** Keeps numbers off the edge of their cell. */
const figures = { pd: { l: 3, r: 4, t: 3 } };
const bold = { bl: BooleanNumber.TRUE };
const wrapped = { tb: WrapStrategy.WRAP };

/** How each role looks in the grid; only what differs from the base. */
const STYLES: Readonly<Record<CellRole, IStyleData>> = {
  title: { ...bold, fs: 18, cl: color(TEAL), pd: { t: 4 } },
  subtitle: { fs: 11, cl: color(MUTED), tb: WrapStrategy.WRAP },
  heading: { ...bold, fs: 12, cl: color(TEAL), vt: VerticalAlign.BOTTOM, pd: {}, bd: { b: edge(TEAL) } },
  text: wrapped,
  note: { ...wrapped, cl: color(MUTED), it: BooleanNumber.TRUE },
  caution: { ...wrapped, cl: color('#8a5a00'), bg: color('#fff3d6'), pd: { l: 6, r: 6, t: 3 } },
  header: { ...bold, bg: color('#e9edef'), bd: { b: edge(MUTED) }, tb: WrapStrategy.WRAP, vt: VerticalAlign.BOTTOM, pd: { l: 3, r: 4 } },
  label: { cl: color(INK) },
  input: { ...figures, bg: color('#fff6d6'), bd: box('#e3cf8f') },
  result: { ...figures, bg: color('#eaf4f2'), bd: box('#c6dfda') },
  reference: { ...figures, cl: color(MUTED), bd: { b: edge(LINE) } },
  formula: { ...figures, bd: { b: edge(LINE) } },
};

/** What a table head takes from what stands below it. */
export interface HeadLook {
  /** The side its text stands on. */
  readonly side: 'left' | 'right';
  /** False if another line of the head follows, so that no line is drawn between. */
  readonly ruled: boolean;
}

/** The style of a cell: its role, its number format, and how it fits in if it is a table head. */
export function roleStyle(role: CellRole, format?: string, head?: HeadLook): IStyleData {
  const { bd, ...style } = { ...BASE_STYLE, ...STYLES[role], ...(format ? { n: { pattern: format } } : {}) };
  return {
    ...style,
    ...(bd && head?.ruled !== false ? { bd } : {}),
    ...(head ? { ht: head.side === 'right' ? HorizontalAlign.RIGHT : HorizontalAlign.LEFT } : {}),
  };
}

/** True for roles whose text runs over several lines, so that the row must grow with it. */
export function wraps(role: CellRole): boolean {
  return STYLES[role].tb === WrapStrategy.WRAP;
}

/** Text size of a role, in points. */
export function sizeOf(role: CellRole): number {
  return STYLES[role].fs ?? BASE_SIZE;
}

export function isBold(role: CellRole): boolean {
  return STYLES[role].bl === BooleanNumber.TRUE;
}
