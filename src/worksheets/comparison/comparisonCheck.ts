import { formula, type Formula } from '../planBuilder';
import { checkHeading, type CheckLine, checkLines } from '../planner/checkLines';
import { type Desk, PERCENT } from '../planner/desk';
import type { ResultTable } from '../planner/resultTable';
import type { BlockCells } from './comparisonBlock';
import type { HeadCells } from './comparisonHead';
import { MOST_DEGREE } from './lastResults';
import type { LastCells } from './lastTable';

/** The main results again by array formulas from the forces and outputs of the tables; gives the next free row. */
export function comparisonCheck(desk: Desk, row: number, blocks: readonly BlockCells[], results: ResultTable, last: readonly LastCells[], head: HeadCells): number {
  const lines = [...worstLines(blocks, results, head), ...last.flatMap(lastLines)];
  return checkLines(desk, checkHeading(desk, row), lines);
}

function line(id: string, label: string, own: string, plain: string, words: string): CheckLine {
  return { id, label, own: `IF(${own}="","",ABS(${own}))`, plain: unlessEmpty(own, plain), format: PERCENT, scale: '1', words };
}

/** The plain formula waits for what the result waits for. */
function unlessEmpty(own: string, plain: string): Formula {
  return formula(`IF(${own}="","",${plain})`);
}

function worstLines(blocks: readonly BlockCells[], { values }: ResultTable, head: HeadCells): CheckLine[] {
  const most = (side: 'found' | 'left', term: (cells: BlockCells, from: number, to: number) => string) =>
    `MAX(${blocks.flatMap((cells) => stretches(cells, (point) => side === 'found' || cells.block.pairs[point] !== undefined).map(([from, to]) => term(cells, from, to))).join(',')})`;
  const at = (id: string) => values.get(id) as string;
  return [
    line('worst_before', '|Worst deviation as found|', at('worst_before'), most('found', (cells, from, to) => deviation(cells, 'found', from, to, head)), 'greatest |output/RO − |force|/capacity|'),
    line('worst_after', '|Worst deviation as left|', at('worst_after'), most('left', (cells, from, to) => deviation(cells, 'left', from, to, head)), 'greatest |output/RO − |force|/capacity|'),
    line('worst_shift', '|Worst shift|', at('worst_shift'), most('left', ({ range, output }, from, to) => `SUMPRODUCT(MAX(ABS(${range('left', from, to)}-${range('found', from, to)})))/${output}`), 'greatest |left − found|/RO'),
  ];
}

/** First and last rows of unbroken stretches of the points that have something. */
function stretches({ block: { pairs }, firstRow }: BlockCells, has: (point: number) => boolean): (readonly [number, number])[] {
  const rows = pairs.flatMap((_, point) => (has(point) ? [firstRow + point] : []));
  const starts = rows.filter((row) => !rows.includes(row - 1));
  const ends = rows.filter((row) => !rows.includes(row + 1));
  return starts.map((start, i) => [start, ends[i]] as const);
}

function deviation({ block, range, output, full, sign, topRow }: BlockCells, column: 'found' | 'left', from: number, to: number, { ratedOutput }: HeadCells): string {
  const [force, own] = [range('force', from, to), range(column, from, to)];
  const [topForce, top] = [range('force', topRow, topRow), range(column, topRow, topRow)];
  const nominal = `SUMPRODUCT(MAX(ABS(${sign}*${own}/${output}-ABS(${force})/${full})))`;
  if (block.indication) return nominal;
  return `IF(${ratedOutput}="",SUMPRODUCT(MAX(ABS(${own}/${top}-${force}/${topForce})))*ABS(${topForce}/${full}),${nominal})`;
}

function lastLines({ cells, then, now, zeroThen, zeroNow, outputThen, outputNow, capacityThen, value, named }: LastCells): CheckLine[] {
  const { output, sign, full, block } = cells;
  const of = ` ${block.words}`;
  const shifts = stretches(cells, (point) => block.found.block.applied[point].value !== 0).map(([from, to]) => {
    const force = cells.range('force', from, to);
    return `SUMPRODUCT(MAX(ABS(${polynomial(now, force)}/${polynomial(then, force)}-1)))`;
  });
  return [
    line(named('zero_change'), `|Change of zero|,${of}`, value('zero_change'), `ABS((${zeroNow}-${zeroThen})/${output})`, '(now − then)/RO'),
    line(named('span_change'), `|Change of span|,${of}`, value('span_change'), `ABS(${sign}*(${outputNow}/${full}-${outputThen}/${capacityThen})*${full}/${output})`, '(now/force − then/force) × capacity/RO'),
    line(named('stability'), `|Worst shift|,${of}`, value('stability'), `MAX(${shifts.join(',')})`, 'greatest |(A0 + A1·F + …) now/then − 1|'),
  ];
}

/** A polynomial over a range of forces, from coefficients in a row. */
function polynomial(coefficients: string, forces: string): string {
  const terms = Array.from({ length: MOST_DEGREE + 1 }, (_, k) => (k === 0 ? `INDEX(${coefficients},1,1)` : `INDEX(${coefficients},1,${k + 1})*ABS(${forces})^${k}`));
  return `(${terms.join('+')})`;
}
