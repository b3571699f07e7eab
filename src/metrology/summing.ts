/** One cell at a junction box. */
export interface SummedCell {
  /** Output, mV/V. */
  readonly output: number;
  /** Output resistance of its bridge, with its lead and trim resistors, ohms. */
  readonly resistance: number;
}

/**
 * Output of cells whose signals are joined in parallel, mV/V: Σ(X/R)/Σ(1/R); with equal resistances the mean.
 * Source: parallel sources (superposition).
 */
export function summingOutput(cells: readonly SummedCell[]): number {
  const least = Math.min(...cells.map(({ resistance }) => resistance));
  const weight = cells.reduce((sum, { resistance }) => sum + least / resistance, 0);
  return cells.reduce((sum, { output, resistance }) => sum + output * (least / resistance / weight), 0);
}
