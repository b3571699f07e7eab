import type { PlanCell } from '../../worksheets/plan';
import { BASE_SIZE, INK, type Look, ROLE_LOOKS } from '../roleLooks';
import type { HeadLook } from '../sheetLayout';

/** How a cell fits in among the others. */
export interface CellSetting {
  /** If it is a table head, what it takes from below. */
  readonly head?: HeadLook;
  /** True if its row is higher than one line. */
  readonly tall: boolean;
}

/** The look of a cell, and whether it may be typed into when the sheet is protected, as Excel takes it. Font and colour of the sheet are left out. */
export function cellProperties({ role }: PlanCell, { head, tall }: CellSetting): Excel.SettableCellProperties {
  const { bold, italic, size = BASE_SIZE, color = INK, fill, wrapped, atBottom, line } = ROLE_LOOKS[role];
  return {
    format: {
      font: { ...(bold && { bold }), ...(italic && { italic }), ...(size !== BASE_SIZE && { size }), ...(color !== INK && { color }) },
      verticalAlignment: atBottom ? 'Bottom' : tall ? 'Top' : 'Center',
      protection: { locked: role !== 'input' },
      ...side(role === 'formula' || head?.over === 'formula', head),
      ...(fill && { fill: { color: fill } }),
      ...(wrapped && { wrapText: true }),
      ...(line && head?.ruled !== false && { borders: borders(line) }),
    },
  };
}

/** Formulas shown as text often stand right of figures; without room the two would run together. */
function side(isFormulaText: boolean, head: HeadLook | undefined): Pick<Excel.CellPropertiesFormat, 'horizontalAlignment' | 'indentLevel'> {
  if (isFormulaText) return { horizontalAlignment: 'Left', indentLevel: 1 };
  return head ? { horizontalAlignment: head.side === 'right' ? 'Right' : 'Left' } : {};
}

function borders({ where, color }: NonNullable<Look['line']>): Excel.CellBorderCollection {
  const edge: Excel.CellBorder = { style: 'Continuous', weight: 'Thin', color };
  return where === 'below' ? { bottom: edge } : { top: edge, right: edge, bottom: edge, left: edge };
}
