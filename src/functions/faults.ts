/** The error values a cell can hold. Only `#VALUE!` and `#N/A` can carry a message in Excel. */
export type FaultCode = '#VALUE!' | '#N/A' | '#DIV/0!' | '#NUM!' | '#NAME?' | '#REF!' | '#NULL!';

/**
 * A worded cell error: what a cell function throws, and what an input cell that holds an error is read as.
 * `#VALUE!` says the input is wrong; `#N/A` says the input is sound but no answer exists.
 */
export class CellFault extends Error {
  constructor(readonly code: FaultCode, message: string) {
    super(message);
    this.name = 'CellFault';
  }
}
