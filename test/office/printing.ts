/** Whether the printed pages show every cell of a plan whole, in its place. */
import type { IRange } from '@univerjs/core';
import { addressOf, isInside, placeOf, rangeOf } from '../../src/hosts/address';
import { ROLE_LOOKS } from '../../src/hosts/roleLooks';
import type { PlanCell } from '../../src/worksheets/plan';
import type { ComputedSheet } from './agreement';
import type { Page, Word } from './pdfWords';
import { type Box, PrintLayout } from './printLayout';

/** Points that the width of a column may be off. */
const SLACK = 1.5;
/** Parts of a word's height, above and below, that letters leave free. */
const FREE = 0.25;
/** Points from the edge of the page that the footer stands within. */
const FOOTER = 38;

/** What is wrong with the printed sheets of a workbook, each fault with its place; none if all is well. */
export function printingFaults(sheets: readonly ComputedSheet[], pages: readonly Page[]): string[] {
  return sheets.flatMap((sheet) => {
    const own = pages.filter((page) => footerOf(page) === plain(sheet.plan.name));
    const expected = new PrintLayout(sheet.plan).pages;
    if (own.length === 0 || own.length > expected) return [`${sheet.plan.name}: found ${own.length} pages; expected ${expected}, each one sheet wide`];
    const layout = asBroken(sheet, own);
    return [...unreadable(sheet, own), ...splitCharts(sheet, layout), ...cutCells(sheet, layout, own)];
  });
}

/** The name of the sheet, which stands at the foot of the page, before the page and the number of pages. */
function footerOf({ height, words }: Page): string {
  const below = words.filter(({ top }) => top > height - FOOTER);
  // A plot that goes on over the next page leaves some of its words there, on other lines.
  const line = below.at(-1)?.top ?? 0;
  const footer = below.filter(({ top }) => Math.abs(top - line) < SLACK).map(({ text }) => text).join(' ');
  return plain(footer.replace(/\d+ \/ \d+$/, ''));
}

/** LibreOffice sometimes puts a row more or less on a page: the layout with the breaks that explain the pages best. */
function asBroken(sheet: ComputedSheet, pages: readonly Page[]): PrintLayout {
  const laidOut = (breaks: readonly number[]) => {
    const layout = new PrintLayout(sheet.plan, breaks, pages.length);
    return { layout, faults: layout.pages === pages.length ? cutCells(sheet, layout, pages).length : Infinity };
  };
  let best = laidOut([]);
  for (let i = 0; i < pages.length - 1; i += 1) {
    const { breaks } = best.layout;
    for (const shift of [-2, -1, 1, 2, 3]) {
      const tried = laidOut([...breaks.slice(0, i), breaks[i] + shift]);
      if (tried.faults < best.faults) best = tried;
    }
  }
  return best.layout;
}

/** Signs of a column too narrow for its number, and of a formula that the program could not read. */
function unreadable({ plan }: ComputedSheet, pages: readonly Page[]): string[] {
  return pages.flatMap(({ words }, i) => words.filter(({ text }) => /###|#NAME\?|Err:/.test(text))
    .map(({ text }) => `${plan.name}, page ${i + 1}: found ${text}`));
}

function splitCharts({ plan }: ComputedSheet, layout: PrintLayout): string[] {
  return (plan.charts ?? []).filter(({ over }) => {
    const range = rangeOf(over);
    return layout.contains(range) && layout.pageOf(range.startRow) !== layout.pageOf(range.endRow);
  }).map(({ over, title }) => `${plan.name}!${over}: found the plot “${title}” on two pages; expected it on one`);
}

function cutCells(sheet: ComputedSheet, layout: PrintLayout, pages: readonly Page[]): string[] {
  const { plan } = sheet;
  const merges = (plan.merges ?? []).map(rangeOf);
  const cells = new Map(plan.cells.map((cell) => [cell.at, cell]));
  return plan.cells.flatMap((cell) => {
    const place = placeOf(cell.at);
    const value = sheet.values(cell.at);
    const merge = merges.find((range) => isInside(place, range));
    const range = merge ?? { startRow: place.row, endRow: place.row, startColumn: place.column, endColumn: place.column };
    if (value === null || value === '' || !layout.contains(range)) return [];
    const shown = merge || ROLE_LOOKS[cell.role].wrapped || cell.lines !== undefined || typeof value !== 'string' ? range : overflow(range, sheet, cells, layout.area);
    const box = layout.boxOf(shown);
    const found = textIn(box, pages[box.page].words);
    const whole = typeof value === 'string' ? found === plain(value) : found !== '' && !found.includes('###');
    return whole ? [] : [`${plan.name}!${cell.at}, page ${box.page + 1}: found “${found}” whole in its place; expected ${JSON.stringify(value)}`];
  });
}

/** Text that is not wrapped shows over the free cells to its right; a formula that gives nothing is not free. */
function overflow(range: IRange, { values }: ComputedSheet, cells: ReadonlyMap<string, PlanCell>, area: IRange): IRange {
  let { endColumn } = range;
  const isFree = (column: number) => {
    const at = addressOf({ row: range.startRow, column });
    return cells.get(at)?.formula === undefined && (values(at) ?? '') === '';
  };
  while (endColumn < area.endColumn && isFree(endColumn + 1)) endColumn += 1;
  return { ...range, endColumn };
}

/** The words that stand whole in a box, line by line, without spaces. */
function textIn(box: Box, words: readonly Word[]): string {
  const inside = words.filter(({ left, right, top, bottom }) => {
    const free = FREE * (bottom - top);
    return left >= box.left - SLACK && right <= box.right + SLACK && top + free >= box.top - SLACK && bottom - free <= box.bottom + SLACK;
  });
  return plain(inside.map(({ text }) => text).join(''));
}

function plain(text: string): string {
  return text.normalize('NFKC').replace(/\s+/g, '');
}
