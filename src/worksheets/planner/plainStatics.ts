import { address } from '../planBuilder';
import { PERCENT } from './desk';
import { type PlainCells, type PlainLine, type PlainTable, rowOfReadings } from './plainTable';
import { readings, type SeriesBlock } from './seriesBlock';
import type { StaticId } from './staticResults';

type Check = Omit<PlainLine, 'id' | 'own'> & {
  /** True if the plain formula keeps the sign; else it gives the magnitude. */
  readonly signed?: boolean;
};

/** Static characteristics by built-in functions; the error band, which needs a search, is left out. */
export function staticChecks(cells: PlainCells, table: PlainTable, ids: readonly StaticId[]): PlainLine[] {
  const checks = checksOf(cells, table);
  return ids.flatMap((id): PlainLine[] => {
    const check = checks[id];
    if (!check) return [];
    const { signed, ...rest } = check;
    const cell = cells.at(id);
    return [{ ...rest, id, own: `IF(${cell}="","",${signed ? cell : `ABS(${cell})`})` }];
  });
}

function checksOf({ block, capacity }: PlainCells, table: PlainTable): Partial<Record<StaticId, Check>> {
  const { firstRow, topRow, lastRow, readingColumn } = block;
  const top = table.mean(topRow);
  const topForce = table.applied(topRow);
  const zeros = rowOfReadings(block, firstRow);
  const line = (from: number, to: number) => `${table.applied(from, to)}/${topForce}*${top}`;
  const output = `${top}*ABS(${capacity}/${topForce})`;
  const share = { format: PERCENT, scale: '1' };
  return {
    sensitivity: { label: 'Output at capacity', signed: true, plain: output, format: '0.0000000', scale: `ABS(${top})`, words: 'mean net at greatest force × capacity/force' },
    zero_balance: { ...share, label: 'Zero balance', signed: true, plain: `${address(readingColumn, firstRow)}/(${output})`, words: 'first zero/output at capacity' },
    nonlinearity: { ...share, label: '|Non-linearity|', plain: `SUMPRODUCT(MAX(ABS(${table.mean(firstRow, topRow)}-${line(firstRow, topRow)})))/ABS(${top})`, words: 'greatest |mean − force/greatest × top|/top' },
    hysteresis: { ...share, label: '|Hysteresis|', plain: `MAX(${hysteresisTerms(block).join(',')})/ABS(${top})`, words: 'greatest |down − up| of a run/top' },
    repeatability: { ...share, label: 'Repeatability', plain: `MAX(${spreads(block).join(',')})/ABS(${top})`, words: 'greatest spread of net readings in a row/top' },
    zero_return: { ...share, label: '|Zero return|', plain: `SUMPRODUCT(MAX(ABS(${rowOfReadings(block, lastRow)}-${zeros})))/ABS(${top})`, words: 'greatest |last zero − first zero|/top' },
    combined_error: { ...share, label: '|Combined error|', plain: `SUMPRODUCT(MAX(ABS(${readings(block)}-${zeros}-${line(firstRow, lastRow)})))/ABS(${top})`, words: 'greatest |net − force/greatest × top|/top' },
  };
}

/** Spread of the net readings of each row. */
function spreads(block: SeriesBlock): string[] {
  const zeros = rowOfReadings(block, block.firstRow);
  return block.answers.points.map((_, i) => {
    const netRow = `${rowOfReadings(block, block.firstRow + i)}-${zeros}`;
    return `SUMPRODUCT(MAX(${netRow}))-SUMPRODUCT(MIN(${netRow}))`;
  });
}

/** |down − up| at each force that stands on both branches, the zeros included: a term for each, over all runs. */
function hysteresisTerms(block: SeriesBlock): string[] {
  const { points } = block.answers;
  const top = block.topRow - block.firstRow;
  return points.flatMap((point, i) => {
    const up = i > top ? points.slice(0, top + 1).lastIndexOf(point) : -1;
    return up < 0 ? [] : [`SUMPRODUCT(MAX(ABS(${rowOfReadings(block, block.firstRow + i)}-${rowOfReadings(block, block.firstRow + up)})))`];
  });
}
