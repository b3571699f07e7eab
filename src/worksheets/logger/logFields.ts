import { LogError } from './logError';

/** What stands between the fields of a line. "blanks": one or more spaces or tabs. */
export type Delimiter = ',' | ';' | '\t' | 'blanks';
export type DecimalMark = '.' | ',';

/** The fields of a line, trimmed. A field in double quotes may hold the delimiter, and a quote written twice; a quote within a field is a mark like any other. */
export function fieldsOf(text: string, delimiter: Delimiter, line: number): string[] {
  if (text.includes('"')) return quotedFields(text, delimiter, line);
  if (delimiter === 'blanks') return text.trim().split(/[ \t]+/);
  return text.split(delimiter).map((field) => field.trim());
}

function quotedFields(text: string, delimiter: Delimiter, line: number): string[] {
  const isBetween = (mark: string): boolean => (delimiter === 'blanks' ? mark === ' ' || mark === '\t' : mark === delimiter);
  const fields: string[] = [];
  let field = '';
  let inside = false;
  for (let i = 0; i < text.length; i += 1) {
    const mark = text[i];
    if (mark === '"' && inside && text[i + 1] === '"') {
      field += '"';
      i += 1;
    } else if (mark === '"' && (inside || field.trim() === '')) inside = !inside;
    else if (!inside && isBetween(mark)) {
      fields.push(field.trim());
      field = '';
    } else field += mark;
  }
  if (inside) throw new LogError(line, 'a quote that is not closed', 'quotes in pairs');
  fields.push(field.trim());
  return delimiter === 'blanks' ? fields.filter((one) => one !== '') : fields;
}

const WITH_POINT = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const WITH_COMMA = /^[+-]?(\d+,?\d*|,\d+)(e[+-]?\d+)?$/i;

/** A field as a number; undefined if it is none. The minus sign of typography counts as one. */
export function numberOf(field: string, decimal: DecimalMark): number | undefined {
  const plain = field.charCodeAt(0) === 0x2212 ? `-${field.slice(1)}` : field;
  if (!(decimal === '.' ? WITH_POINT : WITH_COMMA).test(plain)) return undefined;
  const value = Number(decimal === '.' ? plain : plain.replace(',', '.'));
  return Number.isFinite(value) ? value : undefined;
}

/** What loggers write where there is no value: nothing, dashes, or a word for none or over range. */
const NO_VALUE = /^(-+|nan|n\/a|#n\/a|null|none|ol|ovl|[+-]?inf|overload|overflow)?$/i;

/** True if a field says that its sample has no value. */
export function isNoValue(field: string): boolean {
  return NO_VALUE.test(field);
}
