import { badInput } from '../errors';
import { takeBits } from './bits';
import type { FieldValue } from './fieldType';
import { LAYOUT, LAYOUT_BYTES, type PlacedField } from './layout';
import { unitOf, valueIn } from './units';

/** One field as read from the memory. */
export interface TedsField {
  readonly name: string;
  readonly value: FieldValue;
  /** "" if it has none. */
  readonly unit: string;
}

/** What memory holds where nothing was written, or where it was erased. */
const EMPTY = [0x00, 0xff];

/**
 * The fields of basic TEDS and template 33 (bridge sensor). Whatever cannot be read is an error: a code outside its field's
 * range, another template or precision, an end too early, anything behind the end but 00 and FF. Source: IEEE 1451.4.
 */
export function decodeTeds(bytes: Uint8Array): TedsField[] {
  checkLength(bytes);
  for (const field of LAYOUT.filter(({ only }) => only !== undefined)) read(bytes, field); // first, since they say what the rest is
  const values = LAYOUT.filter(({ only }) => only === undefined).map((field) => ({ field, value: read(bytes, field) }));
  checkRest(bytes);
  return values.map(({ field, value }) => ({ name: field.name, value, unit: unitOf(field, bytes) }));
}

function checkLength(bytes: Uint8Array): void {
  if (bytes.length >= LAYOUT_BYTES) return;
  const cut = LAYOUT.find(({ offset, type }) => offset + type.bits > bytes.length * 8)!;
  throw badInput(`hex: found ${2 * bytes.length} digits, the end of which is in ${cut.name}; expected at least ${2 * LAYOUT_BYTES}`);
}

function read(bytes: Uint8Array, field: PlacedField): FieldValue {
  const value = valueIn(bytes, field);
  if (value !== undefined) return value;
  const { name, offset, type } = field;
  const where = type.bits === 1 ? `bit ${offset}` : `bits ${offset} to ${offset + type.bits - 1}`;
  const otherwise = field.otherwise === undefined ? '' : ` (${field.otherwise})`;
  throw badInput(`hex: ${name}, ${where}: found the code ${takeBits(bytes, offset, type.bits)}; expected ${type.expected}${otherwise}`);
}

function checkRest(bytes: Uint8Array): void {
  const at = bytes.findIndex((byte, i) => i >= LAYOUT_BYTES && !EMPTY.includes(byte));
  if (at < 0) return;
  const found = bytes[at].toString(16).toUpperCase().padStart(2, '0');
  throw badInput(`hex: found ${found} in byte ${at + 1}, digits ${2 * at + 1} and ${2 * at + 2}, behind the end of the data; expected 00 or FF there, since user data is not read`);
}
