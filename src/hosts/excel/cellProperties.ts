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
export function cellProperties({ role, lines }: PlanCell, { head, tall }: CellSetting): Excel.SettableCellProperties {
  const { bold, italic, size = BASE_SIZE, color = INK, fill, wrapped, atBottom, centered, indented, line } = ROLE_LOOKS[role];
  return {
    format: {
      font: { ...(bold && { bold }), ...(italic && { italic }), ...(size !== BASE_SIZE && { size }), ...(color !== INK && { color }) },
      verticalAlignment: atBottom ? 'Bottom' : tall ? 'Top' : 'Center',
      protection: { locked: role !== 'input' },
      ...side(head ? { side: head.side, indented: head.indented } : { side: centered ? 'center' : undefined, indented }),
      ...(fill && { fill: { color: fill } }),
      ...((wrapped || lines !== undefined) && { wrapText: true }),
      ...(line && head?.ruled !== false && { borders: borders(line) }),
    },
  };
}

const SIDES = { left: 'Left', right: 'Right', center: 'Center' } as const;

/** Words right of figures are indented; without room the two would run together. */
function side({ side, indented }: { readonly side?: HeadLook['side']; readonly indented?: boolean }): Pick<Excel.CellPropertiesFormat, 'horizontalAlignment' | 'indentLevel'> {
  if (indented) return { horizontalAlignment: 'Left', indentLevel: 1 };
  return side ? { horizontalAlignment: SIDES[side] } : {};
}

function borders({ where, color }: NonNullable<Look['line']>): Excel.CellBorderCollection {
  const edge: Excel.CellBorder = { style: 'Continuous', weight: 'Thin', color };
  return where === 'below' ? { bottom: edge } : { top: edge, right: edge, bottom: edge, left: edge };
}
