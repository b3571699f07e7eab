const PARTNERS: Readonly<Record<string, string>> = { ')': '(', '}': '{' };

/** What keeps a formula from being read, in words: quotes or brackets that do not pair, or nothing after "=". Undefined if nothing does. */
export function syntaxProblem(formula: string): string | undefined {
  if (formula.replace(/^=/, '').trim() === '') return 'found nothing after "="; expected a formula';
  const open: string[] = [];
  let quote = '';
  for (const character of formula) {
    if (quote) {
      if (character === quote) quote = '';
    } else if (character === '"' || character === "'") quote = character;
    else if (character === '(' || character === '{') open.push(character);
    else if (character in PARTNERS && open.pop() !== PARTNERS[character]) return `found "${character}" without a "${PARTNERS[character]}" before it`;
  }
  if (quote) return `found a ${quote} without its partner`;
  return open.length > 0 ? `found "${open[open.length - 1]}" that is not closed` : undefined;
}
