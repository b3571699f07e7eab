import type { SheetContent, SheetHost } from '../hosts/sheetHost';
import { reasonOf } from './reason';

/** Milliseconds of quiet after the last of several changes before the sheet is read again. */
const QUIET = 300;

/** Shows what the open sheet holds. */
export interface SheetView {
  show(content: SheetContent): void;
  /** The sheet could not be read; the words are for the user. */
  fail(words: string): void;
}

/** Reads the open sheet for the view that is in sight: at once when it comes in sight, and again after changes. */
export class SheetWatch {
  private view: SheetView | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  /** Counts readings, so that a slow one that was overtaken is not shown. */
  private reading = 0;

  constructor(private readonly host: SheetHost) {
    host.onChange(() => {
      if (!this.view) return;
      clearTimeout(this.timer);
      this.timer = setTimeout(() => void this.read(), QUIET);
    });
  }

  /** Reads for this view from now on; for none if it is undefined. */
  follow(view: SheetView | undefined): void {
    this.view = view;
    clearTimeout(this.timer);
    if (view) void this.read();
  }

  private async read(): Promise<void> {
    const { view } = this;
    this.reading += 1;
    const mine = this.reading;
    const isStale = (): boolean => mine !== this.reading || view !== this.view;
    try {
      const content = await this.host.read(await this.host.active());
      if (!isStale()) view?.show(content);
    } catch (error) {
      if (!isStale()) view?.fail(`The sheet could not be read: ${reasonOf(error)}`);
    }
  }
}
