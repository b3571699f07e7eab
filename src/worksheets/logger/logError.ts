/** A log that cannot be read. The message names the line, what was found there and what was expected. */
export class LogError extends Error {
  /** @param line counted from 1, as an editor shows it. */
  constructor(readonly line: number, found: string, expected: string) {
    super(`Line ${line}: found ${found}; expected ${expected}.`);
    this.name = 'LogError';
  }
}

/** A field as a message shows it: short, in quotes. */
export function quoted(field: string): string {
  return `“${field.length > 40 ? `${field.slice(0, 39)}…` : field}”`;
}
