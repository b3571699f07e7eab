import type { Argument } from './call';
import type { Cell } from './cells';
import { CellFault, type FaultCode } from './faults';

const CODES: readonly string[] = ['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NAME?', '#REF!', '#NULL!'] satisfies FaultCode[];

/** Turns an argument as Excel hands it over into ours; never throws. */
export function fromExcel(argument: unknown): Argument {
  if (!Array.isArray(argument)) return cellFromExcel(argument);
  return argument.map((row: unknown) => (Array.isArray(row) ? row.map(cellFromExcel) : [cellFromExcel(row)]));
}

/** One cell: plain values as they are, errors as faults, a data type (a formatted number, an entity) as its plain value. */
function cellFromExcel(cell: unknown): Cell {
  if (cell === null || cell === undefined || cell === '') return null;
  if (typeof cell === 'number' || typeof cell === 'string' || typeof cell === 'boolean') return cell;
  if (typeof cell !== 'object') return unreadable();
  const { code, message, basicType, basicValue } = cell as Record<string, unknown>;
  if (typeof code === 'string') return fault(code, message);
  if (basicType === 'Error') return fault(basicValue, undefined);
  return basicValue === undefined || typeof basicValue === 'object' ? unreadable() : cellFromExcel(basicValue);
}

function fault(code: unknown, message: unknown): CellFault {
  const known = CODES.find((candidate) => candidate === code) as FaultCode | undefined;
  if (known) return new CellFault(known, typeof message === 'string' ? message : '');
  return new CellFault('#VALUE!', `the error ${String(code)}`);
}

function unreadable(): CellFault {
  return new CellFault('#VALUE!', 'a data type without a plain value');
}
