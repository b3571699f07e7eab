import { BooleanNumber, BorderStyleTypes, HorizontalAlign, type IStyleData, VerticalAlign, WrapStrategy } from '@univerjs/core';
import type { CellRole, PlanCell } from '../../worksheets/plan';
import { BASE_SIZE, FONT, INK, type Look, ROLE_LOOKS } from '../roleLooks';
import type { HeadLook } from '../sheetLayout';

const edge = (rgb: string) => ({ s: BorderStyleTypes.THIN, cl: { rgb } });

/** What a cell looks like if nothing else is said. */
export const BASE_STYLE: IStyleData = { ff: FONT, fs: BASE_SIZE, cl: { rgb: INK }, vt: VerticalAlign.TOP, pd: { t: 3 } };

/** Keeps numbers off the edge of their cell. */
const FIGURES = { l: 3, r: 4, t: 3 };

/** Room before words that stand right of figures. */
const INDENT = 9;
/** Padding left and right that a cell has at most. */
export const WIDEST_PADDING = INDENT + 4;

const SIDES = { left: HorizontalAlign.LEFT, right: HorizontalAlign.RIGHT, center: HorizontalAlign.CENTER };

/** Room inside a cell, where it is not the base's: a matter of how the grid draws, so it stands here and not with the looks. */
const PADDING: Partial<Record<CellRole, IStyleData['pd']>> = {
  title: { t: 4 },
  heading: {},
  caution: { l: 6, r: 6, t: 3 },
  header: { l: 3, r: 4 },
  input: FIGURES, result: FIGURES, reference: FIGURES, figure: FIGURES,
};

/** The style of a cell: its role, its number format, whether it wraps though its role does not, and how it fits in if it is a table head. */
export function roleStyle({ role, format, lines }: Pick<PlanCell, 'role' | 'format' | 'lines'>, head?: HeadLook): IStyleData {
  const look: Look = lines === undefined ? ROLE_LOOKS[role] : { ...ROLE_LOOKS[role], wrapped: true };
  const side = head?.side ?? (look.centered ? 'center' : undefined);
  return {
    ...BASE_STYLE,
    ...textStyle(look),
    ...(look.fill ? { bg: { rgb: look.fill } } : {}),
    ...(head?.indented || look.indented ? { pd: { ...FIGURES, l: INDENT } } : PADDING[role] ? { pd: PADDING[role] } : {}),
    ...(look.line && head?.ruled !== false ? { bd: borders(look.line) } : {}),
    ...(format ? { n: { pattern: format } } : {}),
    ...(side ? { ht: SIDES[side] } : {}),
  };
}

function textStyle({ bold, italic, size, color, wrapped, atBottom }: Look): IStyleData {
  return {
    ...(bold ? { bl: BooleanNumber.TRUE } : {}),
    ...(italic ? { it: BooleanNumber.TRUE } : {}),
    ...(size ? { fs: size } : {}),
    ...(color ? { cl: { rgb: color } } : {}),
    ...(wrapped ? { tb: WrapStrategy.WRAP } : {}),
    ...(atBottom ? { vt: VerticalAlign.BOTTOM } : {}),
  };
}

function borders({ where, color }: NonNullable<Look['line']>): IStyleData['bd'] {
  const line = edge(color);
  return where === 'below' ? { b: line } : { t: line, r: line, b: line, l: line };
}
