/** Cuts a piece of a formula at a separator, but not within quotes, brackets or braces. */
export function splitOutside(text: string, separator: ',' | ';'): string[] {
  const parts = [''];
  let quoted = false;
  let depth = 0;
  for (const character of text) {
    if (character === '"') quoted = !quoted;
    else if (!quoted && (character === '(' || character === '{')) depth += 1;
    else if (!quoted && (character === ')' || character === '}')) depth -= 1;
    if (character === separator && !quoted && depth === 0) parts.push('');
    else parts[parts.length - 1] += character;
  }
  return parts;
}
