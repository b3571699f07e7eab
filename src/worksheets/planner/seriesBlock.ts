import { address, type Formula, formula } from '../planBuilder';
import type { Desk } from './desk';
import { type Correction, correctedReadings } from './correction';
import type { SeriesAnswers } from './seriesForm';

/** A block of readings of a sheet: where its parts stand, and the formulas' way to name them. Rows and columns count from 1. */
export interface SeriesBlock {
  /** Ends its names, like "tension" or "as_left_tension". */
  readonly id: string;
  readonly title: string;
  readonly answers: SeriesAnswers;
  /** Column of the values that the readings are compared with: what is applied, or what should be indicated. */
  readonly forceColumn: number;
  readonly forceHead: string;
  readonly forceUnit: string;
  /** First column of the readings that everything is computed from: typed, or corrected. */
  readonly readingColumn: number;
  /** First column of the readings typed in. */
  readonly typedColumn: number;
  readonly netColumn: number;
  readonly meanColumn: number;
  readonly firstRow: number;
  readonly lastRow: number;
  /** Row of the greatest force, the first of them. */
  readonly topRow: number;
  /** True while readings are missing, as a condition in formulas. */
  readonly waiting: string;
}

/** A range of a block: a column, or columns from one to another, over its rows. */
export function span({ firstRow, lastRow }: SeriesBlock, from: number, to = from): string {
  return `${address(from, firstRow)}:${address(to, lastRow)}`;
}

export function forces(block: SeriesBlock): string {
  return span(block, block.forceColumn);
}

export function readings(block: SeriesBlock): string {
  return span(block, block.readingColumn, block.netColumn - 1);
}

/** The cells that readings are typed into. */
export function typed(block: SeriesBlock): string {
  return span(block, block.typedColumn, block.typedColumn + block.answers.runs - 1);
}

export function net(block: SeriesBlock): string {
  return span(block, block.netColumn, block.meanColumn - 1);
}

/** A formula that stays empty until every reading is typed. */
export function onceRead({ waiting }: SeriesBlock, text: string) {
  return formula(`IF(${waiting},"",${text})`);
}

/** What a block is made of besides what every block has. */
export interface BlockStart {
  readonly id: string;
  readonly title: string;
  readonly row: number;
  /** Applied values, sign included. */
  readonly applied: readonly number[];
  readonly appliedHead: string;
  readonly appliedUnit: string;
  readonly typed: boolean;
  /** What the applied values are computed by, if they are. */
  readonly computed?: (point: number) => Formula;
  /** Corrects the readings to the reference temperature, in columns of their own. */
  readonly correction?: Correction;
  /** Head, unit and formula of a column of expected values after the applied ones, if the readings are in another unit. */
  readonly expected?: { readonly head: string; readonly unit: string; readonly formula: (at: string) => string };
}

/** Rows that a block takes above its first point. */
export const HEAD_ROWS = 3;

/**
 * Lays out applied values, readings to type in, net readings and their mean, and below them how many readings are typed.
 * The columns after the mean are the caller's.
 */
export function startBlock({ sheet, width, item, formats }: Desk, answers: SeriesAnswers, start: BlockStart): SeriesBlock {
  const { id, row, applied, expected } = start;
  const { runs } = answers;
  const forceColumn = expected ? 2 : 1;
  const typedColumn = forceColumn + 1;
  const readingColumn = start.correction ? typedColumn + runs + 1 : typedColumn;
  const netColumn = readingColumn + runs;
  const meanColumn = netColumn + runs;
  const firstRow = row + HEAD_ROWS;
  const lastRow = firstRow + applied.length - 1;
  const counted = lastRow + 1;
  const block: SeriesBlock = {
    id, title: start.title, answers, forceColumn, forceHead: (expected ?? { head: start.appliedHead }).head, forceUnit: (expected ?? { unit: start.appliedUnit }).unit,
    readingColumn, typedColumn, netColumn, meanColumn, firstRow, lastRow,
    topRow: firstRow + answers.points.indexOf(Math.max(...answers.points)),
    waiting: `$C$${counted}<$F$${counted}`,
  };
  sheet.wide(1, row, width, 'heading', start.title);
  const runHeads = Array.from({ length: runs }, (_, i) => `Run ${i + 1}${answers.positions[i] ? `, ${answers.positions[i]}` : ''}`);
  sheet.across(1, row + 1, 'header', [start.appliedHead, ...(expected ? [expected.head] : []), ...runHeads, ...(start.correction ? ['Temperature', ...runHeads.map((_, i) => `Corrected ${i + 1}`)] : []), ...runHeads.map((_, i) => (runs > 1 ? `Net ${i + 1}` : 'Net')), 'Mean net']);
  sheet.across(1, row + 2, 'header', [start.appliedUnit, ...(expected ? [expected.unit] : []), ...runHeads.map(() => item.outputUnit), ...(start.correction ? ['°C', ...runHeads.map(() => item.outputUnit)] : []), ...Array.from({ length: runs + 1 }, () => item.outputUnit)]);
  if (start.computed) sheet.down(1, firstRow, 'result', applied.map((_, i) => (start.computed as (point: number) => Formula)(i)), `${formats.applied === '0' ? '0.' : formats.applied}000`);
  else sheet.down(1, firstRow, start.typed ? 'input' : 'reference', applied, formats.applied);
  if (expected) sheet.down(2, firstRow, 'result', applied.map((_, i) => formula(expected.formula(address(1, firstRow + i)))), formats.output);
  for (let i = 0; i < runs; i += 1) sheet.down(typedColumn + i, firstRow, 'input', applied.map(() => undefined), formats.output);
  if (start.correction) correctedReadings(sheet, block, start.correction, formats.output);
  const netText = `PROVE.NET(${forces(block)},${readings(block)}${answers.zero === 'initial' ? '' : `,"${answers.zero}"`})`;
  sheet.spill(netColumn, firstRow, runs, applied.length, answers.zero === 'initial' ? formula(`IF(COUNT(${readings(block)})=0,"",${netText})`) : onceRead(block, netText), formats.output);
  for (let at = firstRow; at <= lastRow; at += 1) {
    const line = `${address(netColumn, at)}:${address(meanColumn - 1, at)}`;
    sheet.put(meanColumn, at, 'result', formula(`IF(COUNT(${line})=0,"",AVERAGE(${line}))`), formats.output);
  }
  countLine(sheet, block, counted);
  sheet.validate({ range: typed(block), rule: { kind: 'number' }, message: `Expected a reading in ${item.outputUnit}, as a number, or nothing.` });
  if (start.typed) sheet.validate({ range: span(block, 1), rule: { kind: 'number' }, message: `Expected what was applied, in ${start.appliedUnit}.` });
  sheet.called(`forces_${id}`, forces(block)).called(`readings_${id}`, typed(block)).called(`net_${id}`, net(block)).called(`mean_${id}`, span(block, meanColumn));
  return block;
}

/** Names the cells that say the units, in the head of the first block, which starts at a row. */
export function nameUnits({ sheet }: Desk, row: number): void {
  sheet.called('unit', address(1, row + 2)).called('output_unit', address(2, row + 2));
}

function countLine(sheet: Desk['sheet'], block: SeriesBlock, row: number): void {
  const wanted = block.answers.runs * block.answers.points.length;
  sheet.put(1, row, 'label', 'Readings typed').put(3, row, 'result', formula(`COUNT(${typed(block)})`), '0');
  sheet.put(4, row, 'aside', 'needed for the results').put(6, row, 'input', wanted, '0');
  sheet.called(`needed_${block.id}`, address(6, row));
  sheet.validate({ range: address(6, row), rule: { kind: 'whole', least: 1, greatest: wanted }, message: `Expected a whole number from 1 to ${wanted}: lower it if a point was left out on purpose.` });
}
