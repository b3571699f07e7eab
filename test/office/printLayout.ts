/** Where each cell of a plan must stand on paper: worked out from widths, heights and page set-up, and not from what was printed. */
import type { IRange } from '@univerjs/core';
import { addressOf, placeOf, rangeOf } from '../../src/hosts/address';
import { pageBreaks } from '../../src/hosts/pageBreaks';
import { isLandscape, ROW_HEIGHT, rowHeights, widthOf } from '../../src/hosts/sheetLayout';
import type { SheetPlan } from '../../src/worksheets/plan';

/** A box on a page of a sheet (from 0); points from the upper left corner. */
export interface Box {
  readonly page: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const POINTS_PER_PIXEL = 0.75;
const A4 = { short: 595.3, long: 841.9 };
/** LibreOffice leaves about a point free above the footer. */
const MARGIN = { side: 36, top: 43.2, bottom: 44.4 };
/** So much wider than in Excel columns come out (measured on printed pages): a figure of the base font counts as 0.556 em, not as 7 pixels. */
const COLUMN_STRETCH = 1.0575;

/** The printed sheet of a plan, one page wide. */
export class PrintLayout {
  readonly area: IRange;
  /** The first row (from 0) of each page but the first. */
  readonly breaks: readonly number[];
  /** Paper points of a point of the sheet. */
  readonly scale: number;
  private readonly tops = new Map<number, { readonly page: number; readonly top: number; readonly bottom: number }>();

  /** `breaks` are the first rows of the pages after the first, as far as they are known better than they can be worked out; the last page holds the rest. */
  constructor(private readonly plan: SheetPlan, breaks: readonly number[] = [], lastPage = Infinity) {
    this.area = rangeOf(plan.print?.area ?? usedArea(plan));
    const [width, height] = isLandscape(plan) ? [A4.long, A4.short] : [A4.short, A4.long];
    this.scale = Math.min(100, Math.floor(((width - 2 * MARGIN.side) / this.width(this.area.startColumn, this.area.endColumn)) * 100)) / 100;
    this.breaks = this.fillPages((height - MARGIN.top - MARGIN.bottom) / this.scale, breaks, lastPage);
  }

  get pages(): number {
    return this.breaks.length + 1;
  }

  contains(range: IRange): boolean {
    return range.startRow >= this.area.startRow && range.endRow <= this.area.endRow
      && range.startColumn >= this.area.startColumn && range.endColumn <= this.area.endColumn;
  }

  /** Where a range within the printed area stands; its rows are on one page. */
  boxOf({ startRow, endRow, startColumn, endColumn }: IRange): Box {
    const [first, last] = [this.row(startRow), this.row(endRow)];
    const left = MARGIN.side + this.scale * this.width(this.area.startColumn, startColumn - 1);
    return { page: first.page, left, right: left + this.scale * this.width(startColumn, endColumn), top: first.top, bottom: last.bottom };
  }

  /** The page (from 0) that a row is printed on. */
  pageOf(row: number): number {
    return this.row(row).page;
  }

  private row(row: number): { readonly page: number; readonly top: number; readonly bottom: number } {
    const found = this.tops.get(row);
    if (!found) throw new Error(`${this.plan.name}: row ${row + 1} is not printed`);
    return found;
  }

  /** Points of the columns from first to last. */
  private width(first: number, last: number): number {
    return widthOf(this.plan, first, last) * POINTS_PER_PIXEL * COLUMN_STRETCH;
  }

  /** Puts the rows on pages that start as told, and after these on such that hold so many points; gives the rows that start pages. */
  private fillPages(room: number, told: readonly number[], lastPage: number): number[] {
    const heights = rowHeights(this.plan);
    const points = (row: number) => (heights.get(row) ?? ROW_HEIGHT) * POINTS_PER_PIXEL;
    const [from, to] = this.plan.print?.repeatRows ?? [1, 0];
    let repeated = 0;
    for (let row = from - 1; row < to; row += 1) repeated += points(row);
    const planned = new Set(pageBreaks(this.plan));
    const breaks: number[] = [];
    let used = 0;
    for (let row = this.area.startRow; row <= this.area.endRow; row += 1) {
      const start = told[breaks.length];
      if (breaks.length + 1 < lastPage && (start === undefined ? used > 0 && (planned.has(row) || used + points(row) > room) : row === start)) {
        breaks.push(row);
        used = row >= to ? repeated : 0;
      }
      this.tops.set(row, { page: breaks.length, top: MARGIN.top + used * this.scale, bottom: MARGIN.top + (used + points(row)) * this.scale });
      used += points(row);
    }
    return breaks;
  }
}

/** The plan with a printed area, if it has none: without one, LibreOffice prints a further column where text of the last one needs it. */
export function withPrintArea(plan: SheetPlan): SheetPlan {
  return plan.print ? plan : { ...plan, print: { area: usedArea(plan), landscape: isLandscape(plan) } };
}

/** From A1 to the last cell, merged block, spilled range or chart of a plan. */
export function usedArea({ cells, merges = [], charts = [] }: SheetPlan): string {
  const blocks = [...merges, ...charts.map(({ over }) => over)].map(rangeOf);
  const spilled = cells.map(({ at, spill = { rows: 1, columns: 1 } }) => {
    const { row, column } = placeOf(at);
    return { endRow: row + spill.rows - 1, endColumn: column + spill.columns - 1 };
  });
  const ends = [...blocks, ...spilled];
  return `A1:${addressOf({ row: Math.max(...ends.map(({ endRow }) => endRow)), column: Math.max(...ends.map(({ endColumn }) => endColumn)) })}`;
}
