import type { Outcome } from '../../functions/associate';

/** Remembers the words of failed calculations by cell: Excel shows them on hovering, but gives no way to read them. */
export class Outcomes {
  private readonly messages = new Map<string, string>();

  /** Takes note of a calculation; one that gave a result wipes the words of an earlier failure. */
  record({ id, address, fault }: Outcome): void {
    const key = keyOf(address, id);
    if (fault) this.messages.set(key, fault.message);
    else this.messages.delete(key);
  }

  /** The words of the functions of a cell that failed, each with its name; empty if none is known. */
  messageAt(address: string, ids: readonly string[]): string {
    return ids
      .map((id) => ({ id, message: this.messages.get(keyOf(address, id)) }))
      .filter(({ message }) => message)
      .map(({ id, message }) => `PROVE.${id}: ${message}`)
      .join(' ');
  }

  /** Forgets everything: for when cells have moved and addresses no longer say which cell failed. */
  clear(): void {
    this.messages.clear();
  }
}

/** One spelling for 'My sheet'!$B$4, [Book]My sheet!B4 and the like. */
function keyOf(address: string, id: string): string {
  const at = address.lastIndexOf('!');
  const sheet = address.slice(0, Math.max(at, 0)).replace(/^'|'$/g, '').replace(/''/g, "'").replace(/^\[[^\]]*\]/, '');
  return `${sheet}!${address.slice(at + 1).replace(/\$/g, '')} ${id}`.toUpperCase();
}
