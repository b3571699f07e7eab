import type { Review } from '../../review/reviewFinding';
import { recomputedWords, recordWords } from '../../review/reviewWords';
import { element } from '../dom';

/** What was looked at, in a few lines. */
export function reviewFacts(review: Review): HTMLElement {
  const { sheets, fingerprint } = review;
  const facts: readonly (readonly [string, string])[] = [
    ['Sheets', sheets.length === 0 ? 'none' : sheets.join(', ')],
    ['Recomputed', recomputedWords(review)],
    ['Record', recordWords(review)],
    ...(fingerprint === undefined ? [] : [['SHA-256', fingerprint] as const]),
  ];
  return element('dl', { class: 'rp-facts', children: facts.flatMap(([term, words]) => [element('dt', { children: [term] }), element('dd', { children: [words] })]) });
}
