import { Color, Format, FormatAlign, FormatBorder } from 'wasm-xlsxwriter';
import type { PlanCell } from '../../worksheets/plan';
import { BASE_SIZE, FONT, INK, ROLE_LOOKS } from '../roleLooks';
import type { HeadLook } from '../sheetLayout';

/** Text that Excel would read as a formula if the cell were edited; it gets the mark that keeps it text. */
const LIKE_A_FORMULA = /^[=+\-@]/;

/** The font of cells of which nothing is said. */
export function baseFormat(): Format {
  return new Format().setFontName(FONT).setFontSize(BASE_SIZE).setFontColor(Color.parse(INK));
}

/** How a cell fits in among the others. */
export interface CellSetting {
  /** If it is a table head, what it takes from below. */
  readonly head?: HeadLook;
  /** True if its row is higher than one line. */
  readonly tall: boolean;
}

const SIDES = { left: FormatAlign.Left, right: FormatAlign.Right, center: FormatAlign.Center };

/** The look of a cell in the file: its role, number format, lock, and how it fits in. */
export function cellFormat({ role, format, value, lines }: PlanCell, { head, tall }: CellSetting): Format {
  const { bold, italic, size = BASE_SIZE, color = INK, fill, wrapped, atBottom, centered, indented, line } = ROLE_LOOKS[role];
  const upright = atBottom ? FormatAlign.Bottom : tall ? FormatAlign.Top : FormatAlign.VerticalCenter;
  const made = baseFormat().setFontSize(size).setFontColor(Color.parse(color)).setAlign(upright);
  const side = head?.side ?? (centered ? 'center' : undefined);
  // Words right of figures are indented; without room the two would run together.
  if (head ? head.indented : indented) made.setAlign(FormatAlign.Left).setIndent(1);
  else if (side) made.setAlign(SIDES[side]);
  if (bold) made.setBold();
  if (italic) made.setItalic();
  if (fill) made.setBackgroundColor(Color.parse(fill));
  if (wrapped || lines !== undefined) made.setTextWrap();
  if (line?.where === 'round') made.setBorder(FormatBorder.Thin).setBorderColor(Color.parse(line.color));
  if (line?.where === 'below' && head?.ruled !== false) made.setBorderBottom(FormatBorder.Thin).setBorderBottomColor(Color.parse(line.color));
  if (format !== undefined) made.setNumFormat(format);
  if (role === 'input') made.setUnlocked();
  if (typeof value === 'string' && LIKE_A_FORMULA.test(value)) made.setQuotePrefix();
  return made;
}
