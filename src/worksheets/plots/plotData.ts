/** A plot of a filled-in sheet, ready to draw. */
export interface PlotData {
  readonly id: string;
  readonly title: string;
  /** Labels of the axes, with their units. */
  readonly x: string;
  readonly y: string;
  readonly series: readonly PlotSeries[];
  /** Stretches of x that are shaded. */
  readonly bands?: readonly { readonly from: number; readonly to: number }[];
}

/** One line or set of points. */
export interface PlotSeries {
  readonly name: string;
  readonly x: number[];
  /** As many as x; null leaves a gap. */
  readonly y: (number | null)[];
  readonly drawn: 'points' | 'line' | 'both' | 'limit';
}
