import { formula } from '../planBuilder';
import { type Desk, PERCENT } from '../planner/desk';
import { outcomeLine, type ResultLine, type ResultTable, resultTable } from '../planner/resultTable';
import type { BlockCells } from './comparisonBlock';
import type { HeadCells } from './comparisonHead';
import { heldBy } from './links';

/** The worst of all blocks, and the outcome before and after; the table's `nextRow` is the next free row. */
export function comparisonResults(desk: Desk, row: number, blocks: readonly BlockCells[], { tolerance }: HeadCells): ResultTable {
  const adjusted = blocks.some(({ block }) => block.left !== undefined);
  const final = adjusted ? 'as left' : 'final';
  const [found, left] = [blocks.map(({ foundMissing }) => foundMissing), blocks.map(({ leftMissing }) => leftMissing)];
  const worst = (column: 'before' | 'after' | 'shift' | 'relative') => {
    const all = blocks.map(({ range }) => range(column)).join(',');
    const missing = column === 'before' ? found : [...found, ...left];
    return formula(`IF(OR(${missing.join(',')},COUNT(${all})=0),"",IF(MAX(${all})>=-MIN(${all}),MAX(${all}),MIN(${all})))`);
  };
  const judged = { limit: formula(heldBy(tolerance)), limitFormat: PERCENT, rule: 'magnitude' as const };
  const lines: (ResultLine & { readonly id: string })[] = [
    { id: 'worst_before', label: 'Worst deviation as found', value: worst('before'), format: PERCENT, unit: 'of RO', function: 'greatest |deviation|, its sign kept', judged },
    { id: 'worst_after', label: `Worst deviation ${final}`, value: worst('after'), format: PERCENT, unit: 'of RO', function: 'greatest |deviation|, its sign kept', judged },
    { id: 'worst_shift', label: `Worst shift, as found to ${final}`, value: worst('shift'), format: PERCENT, unit: 'of RO', function: 'greatest |left − found|/RO' },
    { id: 'worst_relative_shift', label: 'The same at its reading', value: worst('relative'), format: PERCENT, unit: 'of reading', function: 'greatest |left/found − 1|' },
  ];
  const table = resultTable(desk, row, 'Before and after', lines);
  lines.forEach(({ id }) => desk.sheet.called(id, table.values.get(id) as string));
  const before = outcomeLine(desk, table.nextRow, { label: 'Outcome as found', name: 'outcome_before', verdicts: blocks.map(({ range }) => range('verdictBefore')), waiting: found });
  const after = outcomeLine(desk, before, { label: `Outcome ${final}`, name: 'outcome_after', verdicts: blocks.map(({ range }) => range('verdictAfter')), waiting: left });
  return { ...table, nextRow: after + 1 };
}
