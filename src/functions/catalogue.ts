import * as reduction from './reduction';

/** A cell function as written: arguments as a host hands them over, a result or a thrown fault. */
export type CellFunction = (...args: any[]) => unknown;

/** Every cell function by its id, the name after `PROVE.`. */
export const catalogue: Readonly<Record<string, CellFunction>> = {
  NET: reduction.net,
};
