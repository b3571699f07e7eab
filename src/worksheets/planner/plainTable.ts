import { address, formula } from '../planBuilder';
import type { CheckLine } from './checkLines';
import type { Desk } from './desk';
import { readings, type SeriesBlock } from './seriesBlock';

/** Columns of the table that the plain formulas work on. */
export const APPLIED = 1;
const MEAN = 2;
/** |force| as a fraction of the greatest, and its powers; then the fitted values, and the mean that is fitted where the net
 * readings are net of another zero than the first. */
const POWERS = 3;

/** The parts of a block that the plain formulas name. */
export interface PlainCells {
  readonly block: SeriesBlock;
  /** Cell of the degree, and the highest it can be, if the block has a calibration polynomial. */
  readonly fit?: { readonly degree: string; readonly most: number };
  readonly capacity: string;
  /** Address of a result. */
  readonly at: (id: string) => string;
}

/** A result computed again, the plain formula still to be made to wait for every reading. */
export type PlainLine = Omit<CheckLine, 'plain'> & { readonly plain: string };

/** Where the table stands, and ranges of it by rows of the block. */
export interface PlainTable {
  readonly nextRow: number;
  /** Applied values. */
  applied(from: number, to?: number): string;
  /** Means net of the first zero. */
  mean(from: number, to?: number): string;
  /** The means that are fitted. */
  fittedMean(from: number, to?: number): string;
  /** Powers of x, the first so many. */
  powers(count: number, from: number, to: number): string;
  /** Column and sheet row of a fitted value. */
  fitted(from: number, to?: number): string;
}

/** A formula that needs every reading. */
export function whole(block: SeriesBlock, text: string) {
  return formula(`IF(COUNT(${readings(block)})<${block.answers.runs * block.answers.points.length},"",${text})`);
}

export function rowOfReadings({ readingColumn, netColumn }: SeriesBlock, row: number): string {
  return `${address(readingColumn, row)}:${address(netColumn - 1, row)}`;
}

/** Writes the table from a row on: applied, mean net, and for a fit the powers of x and room for the fitted values. */
export function plainTable({ sheet, item, formats }: Desk, row: number, { block, fit }: PlainCells): PlainTable {
  const rowOf = (blockRow: number): number => row + 2 + blockRow - block.firstRow;
  const range = (first: number, last: number, from: number, to: number): string => {
    const start = address(first, rowOf(from));
    return first === last && from === to ? start : `${start}:${address(last, rowOf(to))}`;
  };
  const most = fit?.most ?? 0;
  const fittedColumn = POWERS + most;
  const separate = fit !== undefined && block.answers.zero !== 'initial';
  const meanColumn = separate ? fittedColumn + 1 : MEAN;
  const table: PlainTable = {
    nextRow: rowOf(block.lastRow) + 2,
    applied: (from, to = from) => range(APPLIED, APPLIED, from, to),
    mean: (from, to = from) => range(MEAN, MEAN, from, to),
    fittedMean: (from, to = from) => range(meanColumn, meanColumn, from, to),
    powers: (count, from, to) => range(POWERS, POWERS + count - 1, from, to),
    fitted: (from, to = from) => range(fittedColumn, fittedColumn, from, to),
  };
  sheet.across(1, row, 'header', [block.forceHead, 'Mean net', ...(fit ? [...['x', 'x²', 'x³', 'x⁴', 'x⁵'].slice(0, most), 'Fitted'] : []), ...(separate ? ['Mean, own zero'] : [])]);
  sheet.across(1, row + 1, 'header', [block.forceUnit, item.outputUnit, ...(fit ? ['of greatest', ...Array.from({ length: most - 1 }, () => ''), item.outputUnit] : []), ...(separate ? [item.outputUnit] : [])]);
  for (let from = block.firstRow; from <= block.lastRow; from += 1) {
    const meanOf = (zero: string) => whole(block, `AVERAGE(${rowOfReadings(block, from)})-${zero}`);
    sheet.put(APPLIED, rowOf(from), 'reference', formula(address(block.forceColumn, from)), formats.applied);
    sheet.put(MEAN, rowOf(from), 'result', meanOf(meanZero(block, 'initial', from)), formats.output);
    if (separate) sheet.put(meanColumn, rowOf(from), 'result', meanOf(meanZero(block, block.answers.zero, from)), formats.output);
    if (!fit) continue;
    const x = address(POWERS, rowOf(from));
    sheet.put(POWERS, rowOf(from), 'result', formula(`ABS(${table.applied(from)}/${table.applied(block.topRow)})`), '0.0000');
    for (let k = 2; k <= most; k += 1) sheet.put(POWERS + k - 1, rowOf(from), 'result', formula(`${x}^${k}`), '0.0000');
  }
  return table;
}

/** The mean over the runs of the zero that is taken off in a row. */
function meanZero(block: SeriesBlock, zero: SeriesBlock['answers']['zero'], row: number): string {
  const first = `AVERAGE(${rowOfReadings(block, block.firstRow)})`;
  const last = `AVERAGE(${rowOfReadings(block, block.lastRow)})`;
  if (zero === 'initial') return first;
  if (zero === 'average') return `(${first}+${last})/2`;
  return `(${first}+(${last}-${first})*${row - block.firstRow}/${block.lastRow - block.firstRow})`;
}
