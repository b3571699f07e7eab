import { badInput } from '../errors';
import { putBits } from './bits';
import type { FieldValue } from './fieldType';
import { LAYOUT, LAYOUT_BYTES, type PlacedField } from './layout';
import { unitOf } from './units';

/** One row that somebody filled in. */
export interface TedsEntry {
  readonly name: string;
  /** Undefined if the cell holds what no field takes, such as TRUE. */
  readonly value: FieldValue | undefined;
  /** The unit written beside the value, "" if none. */
  readonly unit: string;
  /** Where it stands and what was found there, as messages name them. */
  readonly place: string;
  readonly found: string;
}

/**
 * Basic TEDS and template 33 (bridge sensor) as bytes. Every field must be there once and within its range; nothing is cut.
 * A number between two steps of its field is kept as the nearest step. Source: IEEE 1451.4.
 */
export function encodeTeds(entries: readonly TedsEntry[]): Uint8Array {
  const given = byField(entries);
  const missing = LAYOUT.filter((field) => field.only === undefined && !given.has(field.name)).map(({ name }) => name);
  if (missing.length > 0) throw badInput(`fields: found no row for ${missing.join(', ')}; expected every field once`);
  const bytes = new Uint8Array(LAYOUT_BYTES);
  for (const field of LAYOUT) putBits(bytes, field.offset, field.type.bits, codeOf(field, given.get(field.name)));
  for (const field of LAYOUT) checkUnit(unitOf(field, bytes), field, given.get(field.name));
  return bytes;
}

function byField(entries: readonly TedsEntry[]): Map<string, TedsEntry> {
  const given = new Map<string, TedsEntry>();
  for (const entry of entries) {
    const field = LAYOUT.find(({ name }) => name.toLowerCase() === entry.name.trim().toLowerCase());
    if (!field) {
      const names = LAYOUT.filter(({ only }) => only === undefined).map(({ name }) => name).join(', ');
      throw badInput(`${entry.place}: found the field "${entry.name}"; expected one of ${names}`);
    }
    const earlier = given.get(field.name);
    if (earlier) throw badInput(`${entry.place}: found ${field.name} again, after ${earlier.place}; expected every field once`);
    given.set(field.name, entry);
  }
  return given;
}

function codeOf(field: PlacedField, entry: TedsEntry | undefined): number {
  if (entry === undefined) return field.only ?? 0; // only fields that steer may be left out
  const code = entry.value === undefined ? undefined : field.type.encode(entry.value);
  if (code === undefined) throw badInput(`${entry.place}: ${field.name}: found ${entry.found}; expected ${field.type.expected}`);
  return code;
}

function checkUnit(unit: string, field: PlacedField, entry: TedsEntry | undefined): void {
  if (entry === undefined || entry.unit === '' || entry.unit.toLowerCase() === unit.toLowerCase()) return;
  throw badInput(`${entry.place}: ${field.name}: found the unit "${entry.unit}"; expected ${unit === '' ? 'no unit' : unit}`);
}
