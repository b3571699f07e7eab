import type { FindingKind, Review, ReviewFinding } from './reviewFinding';

/** Severities, the gravest first, and what their findings are called together. */
export const SEVERITIES: readonly { readonly severity: ReviewFinding['severity']; readonly title: string }[] = [
  { severity: 'wrong', title: 'Wrong' },
  { severity: 'missing', title: 'Missing' },
  { severity: 'odd', title: 'Odd, look again' },
];

/** Kinds of findings as a table names them. */
export const KIND_WORDS: Readonly<Record<FindingKind, string>> = {
  result: 'Result', 'plain check': 'Plain check', overwritten: 'Overwritten', limit: 'Limit', reading: 'Reading', changed: 'Changed',
  standard: 'Standard', rounding: 'Rounding', record: 'Record', sheet: 'Sheet',
};

/** "3 findings: 1 wrong, 2 odd", or that there is none. */
export function countWords(findings: readonly ReviewFinding[]): string {
  if (findings.length === 0) return 'Nothing found';
  const counts = SEVERITIES.map(({ severity }) => [findings.filter((finding) => finding.severity === severity).length, severity] as const);
  const parts = counts.filter(([count]) => count > 0).map(([count, severity]) => `${count} ${severity}`);
  return `${findings.length === 1 ? '1 finding' : `${findings.length} findings`}: ${parts.join(', ')}`;
}

/** How many results an independent path gives too. */
export function recomputedWords({ recomputed, agreeing }: Review): string {
  if (recomputed === 0) return 'no result to recompute';
  return `${agreeing} of ${recomputed} ${recomputed === 1 ? 'result agrees' : 'results agree'}`;
}

/** How the workbook stands to its record. */
export function recordWords({ record }: Review): string {
  return { none: 'not signed', 'as signed': 'everything is as signed', differs: 'differs from what was signed' }[record];
}
