import type { RecordLine } from './record';

const ESCAPES: Readonly<Record<string, string>> = { '\\': '\\\\', '\t': '\\t', '\n': '\\n', '\r': '\\r' };

/** Text on one line: backslash, tab, line feed and return as \\ \t \n \r, other control characters as \u and four digits. */
export function onOneLine(text: string): string {
  // eslint-disable-next-line no-control-regex -- these are the letters to be spelt out
  return text.replace(/[\\\u0000-\u001f\u007f]/g, (letter) => ESCAPES[letter] ?? `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

/** The text that {@link onOneLine} spelt out. */
export function spelt(line: string): string {
  return line.replace(/\\(?:u([0-9a-f]{4})|(.))/g, (_, code: string | undefined, letter: string) => {
    if (code !== undefined) return String.fromCharCode(parseInt(code, 16));
    return { t: '\t', n: '\n', r: '\r' }[letter] ?? letter;
  });
}

/** The five fields of a line, each on one line: sheet, cell, part, content, value. */
export function fieldsOf({ sheet, at, part, content, value }: RecordLine): readonly string[] {
  return [sheet, at, part, content, value].map(onOneLine);
}
