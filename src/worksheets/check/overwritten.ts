import type { FilledCell } from '../filledSheet';
import { described } from './completeness';
import { capped, type Finding } from './finding';
import type { RunSheet } from './runSheet';

/** Cells of results and of net readings whose formula is gone, and net readings that something stands in the way of. */
export function overwritten(sheet: RunSheet): Finding[] {
  const results = sheet.cells.namesAfter('value_')
    .map((result) => withoutFormula(sheet.resultName(result), sheet.cells.cell(`value_${result}`)));
  const nets = sheet.blocks.map((block) => withoutFormula(`${sheet.blockPrefix(block)}net readings`, sheet.cells.cell(`net_${block.id}`)));
  const found = [...results, ...nets, ...sheet.blocks.map(({ id }) => blocked(sheet, id))].filter((finding) => finding !== undefined);
  return capped(found, 'cells without their formula');
}

function withoutFormula(what: string, cell: FilledCell | undefined): Finding | undefined {
  if (!cell || cell.formula !== undefined) return undefined;
  return {
    severity: 'wrong', at: cell.at,
    message: `${what}: ${cell.at} holds ${described(cell.value)}; expected its formula, without which it does not follow the readings. Undo, or build the sheet again`,
  };
}

/** A formula that cannot spill: the cell in its way is the one to clear. */
function blocked(sheet: RunSheet, id: string): Finding | undefined {
  const cells = sheet.cells.rows(`net_${id}`)?.flat() ?? [];
  const [anchor, ...others] = cells;
  if (!anchor || errorIn(anchor) !== '#SPILL!') return undefined;
  const obstacle = others.find(({ value }) => value !== null) ?? anchor;
  return {
    severity: 'wrong', at: obstacle.at,
    message: `${anchor.at} holds #SPILL!: ${obstacle === anchor ? 'something stands' : `${obstacle.at} holds ${described(obstacle.value)}`} where its net readings belong; expected those cells empty`,
  };
}

/** The error that a cell holds, if it does. */
export function errorIn({ value }: FilledCell): string | undefined {
  return typeof value === 'object' && value !== null ? value.error : undefined;
}
