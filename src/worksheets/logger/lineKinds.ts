import { type DecimalMark, isNoValue, numberOf } from './logFields';
import { clockSeconds, dateSeconds, momentSeconds } from './logTime';

/** What a field holds. "none": it says that there is no value. */
export type FieldKind = 'number' | 'clock' | 'date' | 'moment' | 'none' | 'text';

/** What a field is, with this decimal mark. */
export function kindOf(field: string, decimal: DecimalMark): FieldKind {
  if (numberOf(field, decimal) !== undefined) return 'number';
  if (isNoValue(field)) return 'none';
  if (clockSeconds(field) !== undefined) return 'clock';
  if (dateSeconds(field) !== undefined) return 'date';
  return momentSeconds(field) === undefined ? 'text' : 'moment';
}

/** True if a line's fields are what the columns hold, apart from values that are missing. */
export function fits(kinds: readonly FieldKind[], columns: readonly FieldKind[]): boolean {
  return kinds.length === columns.length
    && kinds.some((kind) => kind !== 'none' && kind !== 'text')
    && kinds.every((kind, i) => kind === columns[i] || kind === 'none' || columns[i] === 'none' || columns[i] === 'text');
}

/** What the columns hold: as most lines with a number in them have it. Undefined if there is no such line. */
export function columnsOf(lines: readonly (readonly FieldKind[])[]): FieldKind[] | undefined {
  const counts = new Map<string, number>();
  for (const kinds of lines) {
    if (kinds.includes('number')) counts.set(kinds.join(), (counts.get(kinds.join()) ?? 0) + 1);
  }
  const [most] = [...counts].sort(([, a], [, b]) => b - a);
  if (!most) return undefined;
  const columns = most[0].split(',') as FieldKind[];
  // A column that is mostly without values may still have some.
  return columns.map((kind, i) => (kind === 'none' ? lines.find((kinds) => fits(kinds, columns) && kinds[i] !== 'none')?.[i] ?? 'none' : kind));
}
