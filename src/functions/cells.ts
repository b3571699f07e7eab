import type { CellFault } from './faults';

/** One cell as a host hands it over; blank is null, undefined or "". */
export type Cell = number | string | boolean | null | undefined | CellFault;

/** A range, row by row. */
export type Cells = readonly (readonly Cell[])[];

/** What a cell function may give back to a host: one cell, or a rectangular block that spills. */
export type CellResult = number | string | boolean | (number | string | boolean)[][];
