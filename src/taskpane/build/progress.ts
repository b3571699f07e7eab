import { element } from '../dom';

/** Milliseconds that may pass without a word. */
const PATIENCE = 1000;

/** Shows a moving bar with words in `place` while work takes longer than a second. */
export async function withProgress<T>(place: HTMLElement, words: string, work: Promise<T>): Promise<T> {
  const timer = setTimeout(() => {
    place.replaceChildren(element('p', { children: [words] }), element('progress', { attributes: { 'aria-label': words } }));
  }, PATIENCE);
  try {
    return await work;
  } finally {
    clearTimeout(timer);
    place.replaceChildren();
  }
}
