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
export const BASE_STYLE: IStyleData = { ff: FONT, fs: BASE_SIZE, cl: color(INK), vt: VerticalAlign.MIDDLE };

/** Keeps numbers off the edge of their cell. */
const figures = { pd: { l: 3, r: 4 } };
const bold = { bl: BooleanNumber.TRUE };
const wrapped = { tb: WrapStrategy.WRAP, vt: VerticalAlign.TOP };

/** How each role looks in the grid; only what differs from the base. */
const STYLES: Readonly<Record<CellRole, IStyleData>> = {
  title: { ...bold, fs: 18, cl: color(TEAL) },
  subtitle: { fs: 11, cl: color(MUTED), tb: WrapStrategy.WRAP },
  heading: { ...bold, fs: 12, cl: color(TEAL), vt: VerticalAlign.BOTTOM, bd: { b: edge(TEAL) } },
  text: wrapped,
  note: { ...wrapped, cl: color(MUTED), it: BooleanNumber.TRUE },
  caution: { ...wrapped, cl: color('#8a5a00'), bg: color('#fff3d6'), pd: { l: 6, r: 6 } },
  header: { ...bold, ...figures, bg: color('#e9edef'), bd: { b: edge(MUTED) }, tb: WrapStrategy.WRAP, vt: VerticalAlign.BOTTOM },
  label: { cl: color(INK) },
  input: { ...figures, bg: color('#fff6d6'), bd: box('#e3cf8f') },
  result: { ...figures, bg: color('#eaf4f2'), bd: box('#c6dfda') },
  reference: { ...figures, cl: color(MUTED), bd: { b: edge(LINE) } },
  formula: { ...figures, bd: { b: edge(LINE) } },
};

export type Side = 'left' | 'right';

/** The style of a cell: its role, its number format, and the side its text stands on (left to the grid if not given). */
export function roleStyle(role: CellRole, format?: string, side?: Side): IStyleData {
  return {
    ...BASE_STYLE,
    ...STYLES[role],
    ...(format ? { n: { pattern: format } } : {}),
    ...(side ? { ht: side === 'right' ? HorizontalAlign.RIGHT : HorizontalAlign.LEFT } : {}),
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
