import type { FilledCell } from '../filledSheet';
import { percent, shown } from '../shown';
import { described } from './completeness';
import { capped, type Finding } from './finding';
import { errorIn } from './overwritten';
import type { RunSheet } from './runSheet';

/** A cell that computes something, and what. */
interface Result {
  readonly what: string;
  readonly cell: FilledCell;
}

function resultsOf(sheet: RunSheet): Result[] {
  const values = sheet.cells.namesAfter('value_').map((id) => ({ what: sheet.resultName(id), cell: sheet.cells.cell(`value_${id}`) as FilledCell }));
  const nets = sheet.blocks.flatMap((block) => {
    const cell = sheet.cells.cell(`net_${block.id}`);
    return cell ? [{ what: `${sheet.blockPrefix(block)}net readings`, cell }] : [];
  });
  return [...values, ...nets];
}

/**
 * Results that hold an error. While readings are missing that is no wonder, and one finding says so.
 * #SPILL! has a finding of its own.
 */
export function resultErrors(sheet: RunSheet, readingsMissing: boolean): Finding[] {
  const failed = resultsOf(sheet).filter(({ cell }) => ![undefined, '#SPILL!'].includes(errorIn(cell)));
  const unknown = failed.filter(({ cell }) => errorIn(cell) === '#NAME?');
  const rest = failed.filter(({ cell }) => errorIn(cell) !== '#NAME?');
  return [...functionsUnknown(unknown), ...(readingsMissing ? waiting(rest) : capped(rest.map(failure), 'results that hold an error'))];
}

function functionsUnknown(failed: readonly Result[]): Finding[] {
  if (failed.length === 0) return [];
  const { at } = failed[0].cell;
  return [{
    severity: 'wrong', at,
    message: `${at}${failed.length > 1 ? ` and ${failed.length - 1} more results hold` : ' holds'} #NAME?: the functions are not known here; expected the add-in to be loaded`,
  }];
}

function waiting(failed: readonly Result[]): Finding[] {
  if (failed.length === 0) return [];
  const { at } = failed[0].cell;
  return [{ severity: 'missing', at, message: `${failed.length === 1 ? 'One result waits' : `${failed.length} results wait`} for readings, first in ${at}` }];
}

function failure({ what, cell }: Result): Finding {
  const error = errorIn(cell);
  const why = error === '#N/A' ? 'the readings are sound, but no answer exists for them' : 'expected a result';
  return { severity: error === '#N/A' ? 'odd' : 'wrong', at: cell.at, message: `${what}: ${cell.at} holds ${error}; ${why}. Select the cell to see why` };
}

/** Results that the sheet itself calls outside of their limit. */
export function outside(sheet: RunSheet): Finding[] {
  const found = sheet.cells.namesAfter('verdict_').flatMap((result): Finding[] => {
    const verdict = sheet.cells.cell(`verdict_${result}`) as FilledCell;
    if (typeof verdict.value !== 'string' || verdict.value.trim().toLowerCase() !== 'outside') return [];
    const value = sheet.cells.cell(`value_${result}`);
    const limit = limitCell(sheet, result);
    const held = value ? `outside, ${value.at} holds ${asFormatted(value)}` : `${verdict.at} holds “outside”`;
    const expected = limit && typeof limit.value === 'number' ? `; expected within the limit ${asFormatted(limit)} in ${limit.at}` : '';
    return [{ severity: 'odd', at: verdict.at, message: `${sheet.resultName(result)}: ${held}${expected}` }];
  });
  return capped(found, 'results outside of their limits');
}

/** The limit of a result: of its own name, or of the name that it begins with: limit_nonlinearity for nonlinearity_tension. */
function limitCell(sheet: RunSheet, result: string): FilledCell | undefined {
  const names = sheet.cells.namesAfter('limit_').filter((name) => `${result}_`.startsWith(`${name.replace(/_from$/, '')}_`));
  const longest = names.reduce((most, name) => (name.length > most.length ? name : most), '');
  return sheet.cells.cell(`limit_${longest}`);
}

/** In per cent where the cell shows per cent. */
function asFormatted({ value, format }: FilledCell): string {
  if (typeof value !== 'number') return described(value);
  return format?.includes('%') ? percent(value) : shown(value);
}

/** Points whose error is greater than the tolerance beside it. */
export function outsideTolerance(sheet: RunSheet): Finding[] {
  // A millionth of a step is let go, as on the sheet, so that binary fractions decide nothing.
  const letGo = 1e-6 * (sheet.cells.number('resolution') ?? 0);
  return sheet.forceBlocks().flatMap((block) => {
    const errors = sheet.cells.columns(`errors_${block.id}`)?.[0] ?? [];
    const tolerances = sheet.cells.columns(`tolerances_${block.id}`)?.[0] ?? [];
    const found = errors.flatMap(({ value, at }, row): Finding[] => {
      const [tolerance, applied] = [tolerances[row]?.value, block.applied[row]?.value];
      if (typeof value !== 'number' || typeof tolerance !== 'number' || typeof applied !== 'number') return [];
      if (Math.abs(value) - Math.abs(tolerance) <= letGo) return [];
      return [{
        severity: 'odd', at,
        message: `${sheet.blockPrefix(block)}the error in ${at}, ${sheet.force(value)} at ${sheet.force(applied)}, is beyond its tolerance; expected within ±${sheet.force(Math.abs(tolerance))}`,
      }];
    });
    return capped(found, `errors beyond tolerance in ${block.label.toLowerCase()}`);
  });
}
