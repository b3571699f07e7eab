import { address, formula } from '../planBuilder';
import { type Desk, PERCENT } from './desk';
import { CLASS_WORDS } from './provingLimits';

/** Calls of the functions that the tables show, without the argument for headers; each spills a row a force or a class. */
export interface ProvingCalls {
  readonly figures: string;
  readonly classes: string;
  readonly ranges: string;
  readonly uncertainties: string;
}

/** What the tables are written from. */
export interface TableCells {
  readonly calls: ProvingCalls;
  /** True while something is missing. */
  readonly waiting: string;
  /** The cell of a force by its place. */
  readonly force: (index: number) => string;
  readonly count: number;
  readonly decreasing: boolean;
}

/** Columns of the figures by force. */
export const FIGURES = { force: 1, mean: 2, fitted: 3, b: 4, same: 5, fc: 6, v: 7, class: 8 } as const;
export type Figure = keyof typeof FIGURES;

/** A table with a row a force. */
export interface ForceTable<C extends string> {
  readonly nextRow: number;
  /** The cell of a figure by the place of its force; cells from one place to another. */
  readonly at: (column: C, from: number, to?: number) => string;
}

const item = (call: string, row: number | string, column: number) => `INDEX(${call},${row},${column})`;

function cellsOf<C extends string>(columns: Readonly<Record<C, number>>, firstRow: number): ForceTable<C>['at'] {
  return (column, from, to = from) => {
    const [start, end] = [address(columns[column], firstRow + from), address(columns[column], firstRow + to)];
    return from === to ? start : `${start}:${end}`;
  };
}

/** Xr, Xa, b, b′, fc, v and the class at each force, with what keeps it from a better one. */
export function figuresTable({ sheet, width, item: { unit, outputUnit }, formats }: Desk, row: number, { calls, waiting, force, count, decreasing }: TableCells): ForceTable<Figure> {
  sheet.wide(1, row, width, 'heading', 'Relative deviations and class at each force');
  sheet.wide(1, row + 1, width, 'note', 'PROVE.FORCEPROVING and PROVE.FORCECLASS of forces and net series: Xr mean of X1, X3, X5; Xa interpolated; b with rotation; b′ in the same position; v of the decreasing forces.');
  sheet.across(1, row + 2, 'header', ['Force', 'Xr', 'Xa', 'b', 'b′', 'fc', 'v', 'Class', 'Kept from better by', 'Found', 'Limit']);
  sheet.across(1, row + 3, 'header', [unit, outputUnit, outputUnit, 'of Xr', 'of mean', 'of Xa', 'of X3, X5', '', '', '', '']);
  const first = row + 4;
  const formatOf = (column: number) => (column <= FIGURES.fitted ? `${formats.output}0` : PERCENT);
  for (let i = 0; i < count; i += 1) {
    sheet.put(FIGURES.force, first + i, 'reference', formula(force(i)), formats.applied);
    for (let column: number = FIGURES.mean; column <= FIGURES.v; column += 1) {
      const isRead = column !== FIGURES.v || (decreasing && i < count - 1);
      sheet.put(column, first + i, 'result', isRead ? formula(`IF(${waiting},"",${item(calls.figures, i + 1, column)})`) : undefined, formatOf(column));
    }
    for (let column = 0; column < 4; column += 1) {
      sheet.put(FIGURES.class + column, first + i, column < 2 ? 'verdict' : 'result', formula(`IF(${waiting},"",${item(calls.classes, i + 1, 2 + column)})`), column < 2 ? undefined : PERCENT);
    }
  }
  return { nextRow: first + count + 1, at: cellsOf(FIGURES, first) };
}

/** Over which forces each class holds, and what stops it; gives the next free row. */
export function rangesTable({ sheet, width, item: { unit }, formats }: Desk, row: number, { calls, waiting }: TableCells): number {
  sheet.wide(1, row, width, 'heading', 'Range of each class');
  sheet.acrossTo(width, 1, row + 1, 'header', ['Class', `From, ${unit}`, `To, ${unit}`, 'Stopped by', `At, ${unit}`, 'Found', 'Limit', 'Not judged']);
  CLASS_WORDS.forEach((word, i) => {
    const at = row + 2 + i;
    const cell = (column: number) => item(calls.ranges, i + 1, column);
    const once = (text: string) => formula(`IF(${waiting},"",${text})`);
    sheet.put(1, at, 'label', word).put(2, at, 'result', once(cell(2)), formats.applied).put(3, at, 'result', once(cell(3)), formats.applied);
    sheet.put(4, at, 'verdict', once(`IF(${cell(6)}="","nothing",${cell(4)})`)).put(5, at, 'result', once(`IF(${cell(6)}="","",${cell(5)})`), formats.applied);
    sheet.put(6, at, 'result', once(cell(6)), PERCENT).put(7, at, 'result', once(cell(7)), PERCENT).acrossTo(width, 8, at, 'result', [once(cell(8))]);
  });
  return row + 2 + CLASS_WORDS.length + 1;
}

const UNCERTAINTY = { force: 1, combined: 10, expanded: 11 } as const;

/** w1 to w8, wc and W at each force. */
export function uncertaintyTable({ sheet, width, formats }: Desk, row: number, { calls, waiting, count }: TableCells): ForceTable<keyof typeof UNCERTAINTY> {
  sheet.wide(1, row, width, 'heading', 'Relative uncertainty at each force');
  sheet.wide(1, row + 1, width, 'note', 'PROVE.FORCEUNCERTAINTY, after Annex C (from memory). Drift since the calibration and the use of the instrument add their own parts.');
  sheet.across(1, row + 2, 'header', ['Force', 'w1', 'w2', 'w3', 'w4', 'w5', 'w6', 'w7', 'w8', 'wc', 'W']);
  sheet.across(1, row + 3, 'header', ['', 'force', 'rotation', 'same position', 'resolution', 'v or c', 'zero', 'temperature', 'interpolation', 'combined', 'k = 2']);
  const first = row + 4;
  sheet.spill(1, first, UNCERTAINTY.expanded, count, formula(`IF(${waiting},"",${calls.uncertainties})`), '0.0000%');
  sheet.restyle(1, first, count, 'result', formats.applied).called('uncertainty_table', `${address(1, first)}:${address(UNCERTAINTY.expanded, first + count - 1)}`);
  return { nextRow: first + count + 1, at: cellsOf(UNCERTAINTY, first) };
}
