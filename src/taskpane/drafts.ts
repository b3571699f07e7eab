import type { Answers } from '../worksheets/question';
import type { PaneMemory } from './memory';

const PREFIX = 'draft.';

/** What was begun and is not written to a sheet yet: it outlasts the form, and the page where the browser stores it. */
export class Drafts {
  constructor(private readonly memory: PaneMemory) {}

  /** The words typed under this key, "" if there are none. */
  words(key: string): string {
    return this.memory.get(PREFIX + key) ?? '';
  }

  keep(key: string, words: string): void {
    this.memory.set(PREFIX + key, words);
  }

  drop(key: string): void {
    if (this.words(key) !== '') this.keep(key, '');
  }

  /** The answers given under this key, if any were; what cannot be read counts as none. */
  answers(key: string): Answers | undefined {
    try {
      const held: unknown = JSON.parse(this.words(key));
      if (typeof held !== 'object' || held === null || Array.isArray(held)) return undefined;
      return Object.fromEntries(Object.entries(held).filter((entry): entry is [string, string] => typeof entry[1] === 'string'));
    } catch {
      return undefined;
    }
  }

  keepAnswers(key: string, answers: Answers): void {
    this.keep(key, JSON.stringify(answers));
  }
}
