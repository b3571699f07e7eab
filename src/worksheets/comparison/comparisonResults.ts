import { formula } from '../planBuilder';
import { type Desk, PERCENT } from '../planner/desk';
import { outcomeLine, type ResultLine, type ResultTable, resultTable } from '../planner/resultTable';
import type { BlockCells } from './comparisonBlock';
import type { HeadCells } from './comparisonHead';

const ACCEPTED = '0.0000%';
const NOT_JUDGED = 'not judged: the rule is guarded, and U of the run is not computed';

/** The worst of all blocks, and the outcome before and after; the table's `nextRow` is the next free row. */
export function comparisonResults(desk: Desk, row: number, blocks: readonly BlockCells[], { tolerance, rule }: HeadCells): ResultTable {
  const adjusted = blocks.some(({ block }) => block.left !== undefined);
  const final = adjusted ? 'as left' : 'final';
  const [found, left] = [blocks.map(({ foundMissing }) => foundMissing), blocks.map(({ leftMissing }) => leftMissing)];
  const worst = (column: 'before' | 'after' | 'shift' | 'relative') => {
    const all = blocks.map(({ range }) => range(column)).join(',');
    const missing = column === 'before' ? found : [...found, ...left];
    return formula(`IF(OR(${missing.join(',')},COUNT(${all})=0),"",IF(MAX(${all})>=-MIN(${all}),MAX(${all}),MIN(${all})))`);
  };
  // The limit of the block where the worst deviation stands, so that its verdict is that of its point.
  const limitOf = (side: 'before' | 'after') => blocks.reduceRight((rest, { range, accepted }) => {
    const all = range(side);
    return `IF(MAX(MAX(${all}),-MIN(${all}))=MAX(${blocks.map((one) => `MAX(${one.range(side)}),-MIN(${one.range(side)})`).join(',')}),${accepted[side].limit},${rest})`;
  }, '""');
  const judged = (side: 'before' | 'after') =>
    ({ limit: formula(`IF(${tolerance}="","",${limitOf(side)})`), limitFormat: ACCEPTED, rule: 'magnitude' as const, limitInWords: true });
  const lines: (ResultLine & { readonly id: string })[] = [
    { id: 'worst_before', label: 'Worst deviation as found', value: worst('before'), format: PERCENT, unit: 'of RO', function: 'greatest |deviation|, its sign kept', judged: judged('before') },
    { id: 'worst_after', label: `Worst deviation ${final}`, value: worst('after'), format: PERCENT, unit: 'of RO', function: 'greatest |deviation|, its sign kept', judged: judged('after') },
    { id: 'worst_shift', label: `Worst shift, as found to ${final}`, value: worst('shift'), format: PERCENT, unit: 'of RO', function: 'greatest |left − found|/RO' },
    { id: 'worst_relative_shift', label: 'The same at its reading', value: worst('relative'), format: PERCENT, unit: 'of reading', function: 'greatest |left/found − 1|' },
  ];
  /** Readings are there, but the rule needs a U that is not: nothing was judged then, and nothing is outside. */
  const unjudged = (side: 'before' | 'after', column: 'verdictBefore' | 'verdictAfter', waiting: readonly string[]) => {
    const count = (word: string) => blocks.map(({ range }) => `COUNTIF(${range(column)},"${word}")`).join('+');
    const without = `COUNT(${blocks.map(({ accepted }) => accepted[side].expanded).join(',')})<${blocks.length}`;
    return { condition: `AND(NOT(OR(${waiting.join(',')})),${rule}="guarded",${without},${count('outside')}=0,${count('no result')}>0)`, words: NOT_JUDGED };
  };
  const table = resultTable(desk, row, 'Before and after', lines);
  lines.forEach(({ id }) => desk.sheet.called(id, table.values.get(id) as string));
  const before = outcomeLine(desk, table.nextRow, { label: 'Outcome as found', name: 'outcome_before', verdicts: blocks.map(({ range }) => range('verdictBefore')), waiting: found, unless: unjudged('before', 'verdictBefore', found) });
  const after = outcomeLine(desk, before, { label: `Outcome ${final}`, name: 'outcome_after', verdicts: blocks.map(({ range }) => range('verdictAfter')), waiting: left, unless: unjudged('after', 'verdictAfter', left) });
  return { ...table, nextRow: after + 1 };
}
