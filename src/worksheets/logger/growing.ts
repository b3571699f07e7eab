/** Numbers of a count that is not known beforehand, in one array that grows. */
export class GrowingNumbers {
  private held = new Float64Array(1024);
  private count = 0;

  get length(): number {
    return this.count;
  }

  push(value: number): void {
    if (this.count === this.held.length) {
      const wider = new Float64Array(2 * this.count);
      wider.set(this.held);
      this.held = wider;
    }
    this.held[this.count] = value;
    this.count += 1;
  }

  /** The last number; NaN if there is none. */
  last(): number {
    return this.count === 0 ? Number.NaN : this.held[this.count - 1];
  }

  numbers(): Float64Array {
    return this.held.slice(0, this.count);
  }
}
