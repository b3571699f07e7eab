import type { JobItem } from '../job/job';
import type { Entry, SheetPlan } from '../plan';
import { address } from '../planBuilder';
import type { ReadSheet } from '../readSheet';
import { FilledSheet } from '../filledSheet';
import { lastOf, type LastResults } from './lastResults';
import { unitsDiffer } from './units';

/**
 * What to put into the cells of last time on a comparison sheet that stands already; cells that last time says nothing of are
 * emptied, so that nothing older stays among them.
 * @param target the comparison; a plan has not computed yet whose it is, so it needs the item beside it
 * @param last what the earlier workbook gave
 * @param item whose results are meant; as the sheet says it if left out
 * @throws Error with words for the user if the sheet is no comparison, if no results of the item and its directions are there, or
 * if they are in other units
 */
export function lastEntries(target: SheetPlan | ReadSheet, last: readonly LastResults[], item?: JobItem): Entry[] {
  const sheet = new FilledSheet({ name: target.name, names: target.names ?? [], cells: target.cells.map(({ at, value }) => ({ at, value: value ?? null })) });
  const blocks = sheet.namesAfter('force_');
  if (blocks.length === 0 || !sheet.cell('comparison_item')) throw new Error(`“${target.name}” holds no comparison with last time; expected the sheet that compares as found and as left.`);
  const mark = item ? { name: item.name.value, identification: item.identification.value } : { name: sheet.text('comparison_item'), identification: sheet.text('identification') };
  const found = blocks.flatMap((block) => {
    const one = lastOf(last, block, mark);
    return one ? [{ suffix: blocks.length > 1 ? `_${block}` : '', last: one }] : [];
  });
  if (found.length === 0) throw new Error(`Found no results of “${mark.name ?? 'the item'}” in the earlier workbook; expected a run of the same item and direction.`);
  const units = { unit: sheet.text('unit'), outputUnit: sheet.text('output_unit') };
  const strange = found.find((one) => unitsDiffer(one.last, units));
  if (strange) throw new Error(`Found last time in ${strange.last.unit} and ${strange.last.outputUnit}, on “${strange.last.where}”; expected ${units.unit} and ${units.outputUnit}. Type its results converted.`);
  return found.flatMap((one) => entriesOf(sheet, one.suffix, one.last));
}

function entriesOf(sheet: FilledSheet, suffix: string, last: LastResults): Entry[] {
  const single = ([name, value]: readonly [string, string | number | undefined]): Entry[] => {
    const cell = sheet.cell(`${name}${suffix}`);
    return cell ? [{ at: cell.at, value: value ?? null }] : [];
  };
  const coefficients = sheet.rows(`last_coefficients${suffix}`)?.[0] ?? [];
  return [
    ...([['last_date', last.date], ['last_zero', last.zero], ['last_output', last.output], ['last_capacity', last.capacity], ['last_where', last.where]] as const).flatMap(single),
    ...coefficients.map(({ column, row }, k): Entry => ({ at: address(column, row), value: last.coefficients?.[k] ?? null })),
  ];
}
