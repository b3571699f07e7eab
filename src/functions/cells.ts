import type { CellFault } from './faults';

export type { CellFault };

/** One cell as a host hands it over; blank is null, undefined or "". */
export type Cell = number | string | boolean | null | undefined | CellFault;

/** A range, row by row. */
export type Cells = readonly (readonly Cell[])[];

/** One cell of a result. */
export type CellValue = number | string | boolean;

/** What a cell function gives back to a host: one cell, or a rectangular block that spills; a cell of a block may be a fault. */
export type CellResult = CellValue | (CellValue | CellFault)[][];
