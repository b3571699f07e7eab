import { sha256 } from '@noble/hashes/sha2';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils';
import type { ReadSheet } from '../readSheet';
import { fieldsOf } from './line';
import type { RecordLine, SignedRecord } from './record';
import { recordLines } from './recordLines';

/** SHA-256 in hexadecimal of three parts of a record. */
export interface Fingerprints {
  /** Of the lines of readings. */
  readonly readings: string;
  /** Of the lines of formulas, with what they gave. */
  readonly results: string;
  /** Of all lines. */
  readonly everything: string;
}

/**
 * Fingerprints of a record, which anyone can recompute: SHA-256 (FIPS 180-4) over the text of the lines in UTF-8. A line is
 * sheet, cell, part, content and value with a tab between, and a line feed at its end, also of the last; backslash, tab, line
 * feed and return within a field are written \\ \t \n \r, other control characters \u and four hexadecimal digits. The lines
 * stand sheet by sheet in the order of the workbook, then row by row from left to right.
 */
export function fingerprints(lines: readonly RecordLine[]): Fingerprints {
  const of = (part?: RecordLine['part']): string => hashOf(lines.filter((line) => part === undefined || line.part === part));
  return { readings: of('reading'), results: of('formula'), everything: of() };
}

function hashOf(lines: readonly RecordLine[]): string {
  return sha256Of(lines.map((line) => `${fieldsOf(line).join('\t')}\n`).join(''));
}

/** SHA-256 of a text in UTF-8, hexadecimal. */
export function sha256Of(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** Fingerprint of the readings of one sheet: what was typed in as read, and what it was read at. */
export function readingsFingerprint(sheet: ReadSheet): string {
  return fingerprints(recordLines([sheet])).readings;
}

/** Whether what a record states as its fingerprints is that of its own lines. */
export function recordFits(record: SignedRecord): boolean {
  const own = fingerprints(record.lines);
  return own.readings === record.readings && own.results === record.results && own.everything === record.everything;
}
