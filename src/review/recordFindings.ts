import type { ReadCell, ReadSheet } from '../worksheets/readSheet';
import { type Difference, differences } from '../worksheets/record/differences';
import { recordFits } from '../worksheets/record/fingerprint';
import type { SignedRecord } from '../worksheets/record/record';
import { isIssueCopy } from '../worksheets/record/differences';
import { callsCellFunction, sameValue } from '../worksheets/record/sameContent';
import { valueOf, rowsOfArray } from '../worksheets/record/content';
import type { ReviewFinding } from './reviewFinding';

const KINDS: Readonly<Record<Difference['part'], ReviewFinding['kind']>> = { reading: 'reading', limit: 'limit', entry: 'changed', formula: 'overwritten', sheet: 'changed' };

/** What differs from what was signed, and whether the record fits together. `mayChange`: cells filled in after signing, as "Sheet!A1". */
export function recordFindings(record: SignedRecord, sheets: readonly ReadSheet[], mayChange: ReadonlySet<string>): ReviewFinding[] {
  const found = differences(record, sheets).filter(({ sheet, at, was }) => !(mayChange.has(`${sheet}!${at}`) && was === ''));
  return [
    ...(recordFits(record) ? [] : [misfit(record)]),
    ...found.map(({ sheet, at, part, was, is }): ReviewFinding => ({
      severity: 'wrong', kind: kindOf(part, was), sheet, at,
      message: part === 'sheet'
        ? (is === '' ? `The sheet “${was}” was there when the record was signed, and is gone` : `The sheet “${is}” was not there when the record was signed`)
        : `${at} holds ${is === '' ? 'nothing' : is}; expected ${was === '' ? 'nothing' : was}, as signed`,
    })),
  ];
}

/** A formula that is kept and gives another value is a result that changed. */
function kindOf(part: Difference['part'], was: string): ReviewFinding['kind'] {
  return part === 'formula' && !was.startsWith('=') ? 'result' : KINDS[part];
}

function misfit({ sheet }: SignedRecord): ReviewFinding {
  return { severity: 'wrong', kind: 'record', sheet, at: 'A1', message: 'The fingerprints that the record states are not those of its lines; expected a record as it was signed' };
}

/**
 * The sheets of an issue copy with the formulas that the record knows put back beside their values, where these are still what
 * the formulas gave, so that they are reviewed like any others. Other workbooks as they are.
 */
export function withFormulas(record: SignedRecord, sheets: readonly ReadSheet[]): readonly ReadSheet[] {
  if (!isIssueCopy(record, sheets)) return sheets;
  const lines = new Map(record.lines.filter(({ part, content }) => part === 'formula' && callsCellFunction(content)).map((line) => [`${line.sheet}!${line.at}`, line]));
  return sheets.map((sheet) => {
    const seen = new Set<string>();
    const cells = sheet.cells.map((cell): ReadCell => {
      const line = lines.get(`${sheet.name}!${cell.at}`);
      seen.add(cell.at);
      const gave = line && (rowsOfArray(line.value)?.[0][0] ?? valueOf(line.value));
      return line && cell.formula === undefined && gave !== undefined && sameValue(gave, cell.value) ? { ...cell, formula: line.content } : cell;
    });
    // A formula that gave nothing leaves no cell behind.
    const blank = [...lines.values()].filter((line) => line.sheet === sheet.name && !seen.has(line.at) && valueOf(line.value) === null)
      .map(({ at, content }): ReadCell => ({ at, value: null, formula: content }));
    return { ...sheet, cells: [...cells, ...blank] };
  });
}
