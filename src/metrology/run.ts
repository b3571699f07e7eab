/** One application of force and what was read there. */
export interface Point {
  /** Position of its row among the rows of the block, from 1: the same in every run. */
  readonly row: number;
  /** Where it stands in the range, as messages name it: "row 3", or "row 3, column 2". */
  readonly place: string;
  /** Place in the order applied, counted over the rows that hold a force: what interpolation in time runs over. */
  readonly order: number;
  /** Magnitude of the applied force, ≥ 0. Zero marks a zero reading. */
  readonly force: number;
  /** What was read, in output units, sign kept. */
  readonly reading: number;
}

/** One run: points of one direction in the order applied, zero rows included. */
export type Run = readonly Point[];

/** Whether the point is a zero reading. */
export function isZero(point: Point): boolean {
  return point.force === 0;
}
