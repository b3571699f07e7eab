import type { ReadCell, ReadSheet, ReadValue } from '../readSheet';
import { addressesOf, areaFrom } from '../area';
import { contentOf, rowsOfArray, valueOf } from './content';
import type { RecordLine, SignedRecord } from './record';
import { isRecorded, recordLines } from './recordLines';
import { callsCellFunction, sameConstant, sameFormula, sameValue } from './sameContent';

/** What a workbook holds otherwise than its record. */
export interface Difference {
  readonly sheet: string;
  readonly at: string;
  /** The part that the cell plays, by the record, or now if it is new. "sheet": a whole sheet that is gone or new; `at` is A1. */
  readonly part: RecordLine['part'] | 'sheet';
  /** What the record holds: a constant, a formula, or what it gave if that differs; "" if nothing. */
  readonly was: string;
  /** What the cell holds instead; "" if nothing. */
  readonly is: string;
}

/**
 * What differs between a workbook and its record: cells changed, gone and new, in the order of the record, then what is new. Constants are compared
 * exactly, formulas apart from blanks and case, what they give to 1e-9. In a copy whose cell functions all became values, these
 * values have to be what the functions gave.
 */
export function differences(record: SignedRecord, sheets: readonly ReadSheet[]): Difference[] {
  const now = sheets.filter(isRecorded);
  const frozen = isIssueCopy(record, now);
  const bySheet = new Map(now.map((sheet) => [sheet.name, new Map(sheet.cells.map((cell) => [cell.at, cell]))]));
  const recorded = new Set(record.lines.map(({ sheet }) => sheet));
  const gone = [...recorded].filter((sheet) => !bySheet.has(sheet)).map((sheet): Difference => ({ sheet, at: 'A1', part: 'sheet', was: sheet, is: '' }));
  const known = new Set<string>();
  const changed = record.lines.flatMap((line): Difference[] => {
    known.add(keyOf(line));
    const cells = bySheet.get(line.sheet);
    return cells ? changesOf(line, cells, frozen, known) : [];
  });
  // A sheet that holds nothing has no line, then as now.
  const added = now.filter((sheet) => !recorded.has(sheet.name) && recordLines([sheet]).length > 0).map(({ name }): Difference => ({ sheet: name, at: 'A1', part: 'sheet', was: '', is: name }));
  const cells = recordLines(now).filter((line) => recorded.has(line.sheet) && !known.has(keyOf(line)))
    .map(({ sheet, at, part, content }): Difference => ({ sheet, at, part, was: '', is: content }));
  return [...gone, ...changed, ...added, ...cells];
}

/** Whether no cell function is left of those that a record has: a copy for people without the program. */
export function isIssueCopy(record: SignedRecord, sheets: readonly ReadSheet[]): boolean {
  const had = record.lines.some(({ part, content }) => part === 'formula' && callsCellFunction(content));
  return had && !sheets.some(({ cells }) => cells.some(({ formula }) => formula !== undefined && callsCellFunction(formula)));
}

function keyOf({ sheet, at }: { readonly sheet: string; readonly at: string }): string {
  return `${sheet}!${at}`;
}

function changesOf(line: RecordLine, cells: ReadonlyMap<string, ReadCell>, frozen: boolean, known: Set<string>): Difference[] {
  const cell = cells.get(line.at);
  const formula = cell?.formula;
  const differs = (is: string, was = line.content): Difference[] => [{ sheet: line.sheet, at: line.at, part: line.part, was, is }];
  if (line.part !== 'formula') {
    const same = formula === undefined && sameConstant(line.content, cell?.value ?? null);
    return same ? [] : differs(formula ?? contentOf(cell?.value ?? null));
  }
  const isKept = formula === undefined ? frozen && callsCellFunction(line.content) : sameFormula(line.content, formula);
  const results = resultsOf(line);
  results.forEach(({ at }) => known.add(keyOf({ sheet: line.sheet, at })));
  if (!isKept) return differs(formula ?? contentOf(cell?.value ?? null));
  return results.flatMap(({ at, was }): Difference[] => {
    const is = cells.get(at)?.value ?? null;
    return sameValue(was, is) ? [] : [{ sheet: line.sheet, at, part: 'formula', was: contentOf(was), is: contentOf(is) }];
  });
}

/** What a formula gave, cell by cell. */
function resultsOf({ at, value }: RecordLine): readonly { readonly at: string; readonly was: ReadValue }[] {
  const rows = rowsOfArray(value);
  const area = rows && areaFrom(at, rows.length, rows[0].length);
  if (!rows || !area) return [{ at, was: valueOf(value) }];
  return addressesOf(area).flatMap((line, i) => line.map((one, j) => ({ at: one, was: rows[i][j] ?? null })));
}
