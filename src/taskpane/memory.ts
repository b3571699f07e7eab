const PREFIX = 'provingsheet.';

/** Small things the pane remembers. Where the browser stores nothing, they last as long as the page. */
export interface PaneMemory {
  get(key: string): string | undefined;
  /** False if it will be forgotten with the page. */
  set(key: string, value: string): boolean;
}

/** Remembers in the browser's local storage; a frame of Excel may have none, and it may be full. */
export function browserMemory(): PaneMemory {
  const held = new Map<string, string>();
  return {
    get(key) {
      if (held.has(key)) return held.get(key);
      try {
        return localStorage.getItem(PREFIX + key) ?? undefined;
      } catch {
        return undefined;
      }
    },
    set(key, value) {
      try {
        localStorage.setItem(PREFIX + key, value);
        held.delete(key);
        return true;
      } catch {
        held.set(key, value);
        return false;
      }
    },
  };
}

/** The same memory, which tells after each thing to remember whether it will outlast the page. */
export function tellingMemory(memory: PaneMemory, told: (isKept: boolean) => void): PaneMemory {
  return {
    get: (key) => memory.get(key),
    set(key, value) {
      const isKept = memory.set(key, value);
      told(isKept);
      return isKept;
    },
  };
}
