import type { FilledCell } from '../filledSheet';
import { address } from '../planBuilder';
import { highlightVerdicts } from '../planner/resultTable';
import { shownFrom } from './cellReference';
import type { CertificateDesk } from './certificateDesk';

/** A column of a table with a row a point. */
export interface PointColumn {
  /** What of the run it shows, like "mean_tension": its range is called `shown_mean_tension`. No name if several columns belong together. */
  readonly id?: string;
  readonly head: string;
  readonly unit: string;
  /** The cells that it shows, from top to bottom; undefined where nothing is stated. */
  readonly cells: readonly (FilledCell | undefined)[];
  /** Sheet of the cells, if another than the run's. */
  readonly sheet?: string;
  /** Format by row; general if it is undefined. */
  readonly format: (row: number) => string | undefined;
  readonly verdict?: boolean;
}

/** Where a table of points stands. */
export interface PointTable {
  readonly nextRow: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** Range of a column, from 0, over rows of the table, from 0; all of them if not said. */
  readonly range: (column: number, from?: number, to?: number) => string;
}

/** Columns side by side from a column of the page on, with their heads and units. */
export function pointTable({ sheet }: CertificateDesk, row: number, left: number, run: string, columns: readonly PointColumn[]): PointTable {
  const count = Math.max(...columns.map(({ cells }) => cells.length));
  const firstRow = row + 2;
  const range = (column: number, from = 0, to = count - 1) => `${address(left + column, firstRow + from)}:${address(left + column, firstRow + to)}`;
  columns.forEach(({ id, head, unit, cells, sheet: source = run, format, verdict = false }, i) => {
    sheet.put(left + i, row, 'header', head).put(left + i, row + 1, 'header', unit);
    for (let at = 0; at < count; at += 1) {
      const cell = cells[at];
      sheet.put(left + i, firstRow + at, verdict ? 'verdict' : 'figure', cell && shownFrom(source, cell.at), format(at));
    }
    if (verdict) highlightVerdicts(sheet, range(i));
    if (id !== undefined) sheet.called(`shown_${id}`, range(i));
  });
  return { nextRow: firstRow + count, firstRow, lastRow: firstRow + count - 1, range };
}
