import type { LogLine } from './logForm';

/** The lines of a text, one after the other, whichever way their ends are written. Blank ones and comments (#) are passed over. */
export class LogLines {
  private readonly text: string;
  private readonly end: string;
  private at = 0;
  /** Lines gone by. */
  passed = 0;

  constructor(text: string) {
    this.text = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
    this.end = this.text.includes('\n') ? '\n' : '\r';
  }

  /** Share of the text gone by, from 0 to 1. */
  get share(): number {
    return this.text.length === 0 ? 1 : Math.min(1, this.at / this.text.length);
  }

  /** True if the text ends within a line: its last line may be cut off. */
  get endsOpen(): boolean {
    return this.text.length > 0 && !this.text.endsWith(this.end);
  }

  /** The next line with something in it; undefined at the end of the text. */
  next(): LogLine | undefined {
    while (this.at < this.text.length) {
      const found = this.text.indexOf(this.end, this.at);
      const stop = found < 0 ? this.text.length : found;
      const text = this.text.slice(this.at, stop > this.at && this.text[stop - 1] === '\r' ? stop - 1 : stop);
      this.at = stop + 1;
      this.passed += 1;
      if (text.trim() !== '' && !text.startsWith('#')) return { text, line: this.passed };
    }
    return undefined;
  }

  /** True if nothing but blank lines and comments is left. */
  get isLast(): boolean {
    return this.text.slice(this.at).trim() === '';
  }

  /** From the first line again. */
  restart(): void {
    this.at = 0;
    this.passed = 0;
  }
}
