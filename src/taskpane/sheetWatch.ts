import type { SheetContent, SheetHost } from '../hosts/sheetHost';
import { reasonOf } from './reason';

/** Milliseconds of quiet after the last of several changes before the sheet is read again. */
const QUIET = 300;

/** Shows what was read of a workbook. */
export interface View<T> {
  show(content: T): void;
  /** It could not be read; the words are for the user. */
  fail(words: string): void;
}

/** Shows what the open sheet holds. */
export type SheetView = View<SheetContent>;

/** Shows what every sheet holds. */
export type WorkbookView = View<readonly SheetContent[]>;

/** How a watch reads, and what it calls that. */
interface Reading<T> {
  readonly what: string;
  readonly read: (host: SheetHost) => Promise<T>;
}

/** Reads for the view that is in sight: at once when it comes in sight, and again after changes. */
export class Watch<T> {
  private view: View<T> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Counts readings, so that a slow one that was overtaken is not shown. */
  private reading = 0;

  constructor(private readonly host: SheetHost, private readonly how: Reading<T>) {
    host.onChange(() => {
      if (!this.view) return;
      clearTimeout(this.timer);
      this.timer = setTimeout(() => void this.read(), QUIET);
    });
  }

  /** Reads for this view from now on; for none if it is undefined. */
  follow(view: View<T> | undefined): void {
    this.view = view;
    clearTimeout(this.timer);
    if (view) void this.read();
  }

  /** Reads at once, as after something was written. */
  async again(): Promise<void> {
    clearTimeout(this.timer);
    await this.read();
  }

  private async read(): Promise<void> {
    const { view } = this;
    this.reading += 1;
    const mine = this.reading;
    const isStale = (): boolean => mine !== this.reading || view !== this.view;
    try {
      const content = await this.how.read(this.host);
      if (!isStale()) view?.show(content);
    } catch (error) {
      if (!isStale()) view?.fail(`The ${this.how.what} could not be read: ${reasonOf(error)}`);
    }
  }
}

/** Reads the open sheet. */
export class SheetWatch extends Watch<SheetContent> {
  constructor(host: SheetHost) {
    super(host, { what: 'sheet', read: async () => host.read(await host.active()) });
  }
}

/** Reads every sheet of the workbook, in their order. */
export class WorkbookWatch extends Watch<readonly SheetContent[]> {
  constructor(host: SheetHost) {
    super(host, { what: 'workbook', read: readAll });
  }
}

/** Every sheet, one after the other: side by side, they would be as many requests at once. */
export async function readAll(host: Pick<SheetHost, 'sheets' | 'read'>): Promise<readonly SheetContent[]> {
  const read: SheetContent[] = [];
  for (const { name } of await host.sheets()) read.push(await host.read(name));
  return read;
}
