import type { FakeExcel } from './fakeExcel';

type Bag = Record<string, unknown>;

/** Makes an object of the stand-in: members are called at once, properties are loaded before they are read. */
export interface ObjectParts {
  /** The class it stands for, in the words of a failing call. */
  readonly type: string;
  /** Methods, and objects below it. */
  readonly members?: Bag;
  /** Reads a property at the sync; undefined stands for an object that is null. */
  readonly read?: () => Bag | undefined;
  /** Sets a property at the sync. */
  readonly write?: (name: string, value: unknown) => void;
}

export function fakeObject(excel: FakeExcel, { type, members = {}, read, write }: ObjectParts): object {
  const loaded: Bag = {};
  const load = (names: string): void => excel.ask(`${type}.load`, () => {
    const values = read?.();
    loaded.isNullObject = values === undefined;
    for (const name of names.split(',').map((part) => part.replace('items/', ''))) {
      if (values && !(name in values) && !('items' in values)) throw new Error(`${type} has no property "${name}"`);
      if (values) loaded[name] = values[name];
    }
    if (values && 'items' in values) loaded.items = (values.items as ((names: string[]) => unknown)[]).map((item) => item(names.replaceAll('items/', '').split(',')));
  });
  return new Proxy({}, {
    get: (_, name: string) => {
      if (name === 'load') return load;
      if (name in members) return members[name];
      if (name in loaded) return loaded[name];
      // A promise would be asked for this.
      if (name === 'then') return undefined;
      throw Object.assign(new Error(`${type}.${name} was read before it was loaded and synced`), { code: 'PropertyNotLoaded' });
    },
    set: (_, name: string, value: unknown) => {
      if (!write) throw new Error(`${type}.${name} cannot be set`);
      excel.ask(`${type}.${name}`, () => write(name, value));
      return true;
    },
  });
}

/** An object of which only properties are set, to any depth; they land in the bag that `target` gives at the sync. */
export function settable(excel: FakeExcel, type: string, target: () => Bag, members: Bag = {}): object {
  return new Proxy({}, {
    get: (_, name: string) => (name in members ? members[name] : settable(excel, `${type}.${name}`, () => {
      const bag = target();
      bag[name] ??= {};
      return bag[name] as Bag;
    })),
    set: (_, name: string, value: unknown) => {
      excel.ask(`${type}.${name}`, () => { target()[name] = value; });
      return true;
    },
  });
}
