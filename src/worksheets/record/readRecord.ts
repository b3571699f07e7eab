import { FilledSheet } from '../filledSheet';
import type { ReadSheet, ReadValue } from '../readSheet';
import { contentOf } from './content';
import { spelt } from './line';
import { LEDGER } from './planRecord';
import type { RecordLine, SignedRecord } from './record';

const PARTS: readonly string[] = ['reading', 'limit', 'entry', 'formula'] satisfies RecordLine['part'][];

/** The record among the sheets of a workbook; undefined if there is none. Rows that are no line of a ledger are left out, so that the fingerprint tells. */
export function readRecord(sheets: readonly ReadSheet[]): SignedRecord | undefined {
  const sheet = sheets.find(({ names }) => names.some(({ name }) => name.toLowerCase() === 'record_everything'));
  if (!sheet) return undefined;
  const filled = new FilledSheet(sheet);
  const stated = (name: string): string => textOf(filled.cell(name)?.value ?? null).trim();
  return {
    sheet: sheet.name, lines: linesOf(filled),
    readings: stated('record_readings'), results: stated('record_results'), everything: stated('record_everything'),
    signedBy: stated('record_by'), signedOn: filled.number('record_on'),
  };
}

function linesOf(sheet: FilledSheet): RecordLine[] {
  const columns = LEDGER.map((field) => columnOf(sheet, field));
  return columns[0].flatMap((_, row): RecordLine[] => {
    const [name, at, part, content, value] = columns.map((column) => spelt(textOf(column[row] ?? null)));
    return PARTS.includes(part) ? [{ sheet: name, at, part: part as RecordLine['part'], content, value }] : [];
  });
}

/** A column of the ledger, of all the names that it is split over. */
function columnOf(sheet: FilledSheet, field: string): ReadValue[] {
  const values: ReadValue[] = [];
  for (let part = 1; ; part += 1) {
    const cells = sheet.columns(`record_${field}${part === 1 ? '' : `_${part}`}`)?.[0];
    if (!cells) return values;
    for (const { value } of cells) values.push(value);
  }
}

/** A field as text, also where a program took it for a number. */
function textOf(value: ReadValue): string {
  return typeof value === 'string' ? value : contentOf(value);
}
