import type { CellRole, Highlight } from '../worksheets/plan';

/** Size of text in points, and its font, where nothing else is said. */
export const BASE_SIZE = 10;
export const FONT = 'Arial';

export const INK = '#1d2733';
export const MUTED = '#5a6672';
export const TEAL = '#0b6e6e';
export const LINE = '#d5d9dc';
export const AMBER = '#8a5a00';
export const RED = '#a3201d';

/** How a cell looks; what is left out is as the base: ink on paper, not wrapped, at the top of the cell. */
export interface Look {
  readonly bold?: boolean;
  readonly italic?: boolean;
  /** Points. */
  readonly size?: number;
  readonly color?: string;
  readonly fill?: string;
  readonly wrapped?: boolean;
  readonly atBottom?: boolean;
  /** Its text stands in the middle of the cell. */
  readonly centered?: boolean;
  /** Its text stands off from the edge, where the cell to the left may be full to the brim. */
  readonly indented?: boolean;
  /** A line below, or a box all round. */
  readonly line?: { readonly where: 'below' | 'round'; readonly color: string };
}

/** How each role looks, whichever host draws it. */
export const ROLE_LOOKS: Readonly<Record<CellRole, Look>> = {
  title: { bold: true, size: 18, color: TEAL },
  subtitle: { size: 11, color: MUTED, wrapped: true },
  heading: { bold: true, size: 12, color: TEAL, atBottom: true, line: { where: 'below', color: TEAL } },
  text: { wrapped: true },
  note: { wrapped: true, color: MUTED, italic: true },
  caution: { wrapped: true, color: AMBER, fill: '#fff3d6' },
  header: { bold: true, fill: '#e9edef', wrapped: true, atBottom: true, line: { where: 'below', color: MUTED } },
  label: {},
  input: { fill: '#fff6d6', line: { where: 'round', color: '#e3cf8f' } },
  result: { fill: '#eaf4f2', line: { where: 'round', color: '#c6dfda' } },
  reference: { color: MUTED, line: { where: 'below', color: LINE } },
  formula: { indented: true, line: { where: 'below', color: LINE } },
  aside: { indented: true },
  field: { color: MUTED, line: { where: 'below', color: LINE } },
  stated: { indented: true, line: { where: 'below', color: LINE } },
  figure: { line: { where: 'below', color: LINE } },
  verdict: { fill: '#eaf4f2', centered: true, line: { where: 'round', color: '#c6dfda' } },
};

/** How a cell looks while the condition of a highlight holds. Bold, so that it is not told by colour alone. */
export const HIGHLIGHT_LOOKS: Readonly<Record<Highlight['look'], { readonly color: string; readonly fill: string }>> = {
  pass: { color: TEAL, fill: '#d8ece8' },
  fail: { color: RED, fill: '#fbe4e2' },
  doubt: { color: AMBER, fill: '#fff3d6' },
};
