import type { Nullable } from '@univerjs/core';
import {
  ArrayValueObject, type BaseReferenceObject, type BaseValueObject, BooleanValueObject, ErrorType, ErrorValueObject, type FunctionVariantType,
  NullValueObject, NumberValueObject, StringValueObject,
} from '@univerjs/engine-formula';
import type { Argument } from '../../functions/call';
import type { Cell, CellResult, Cells } from '../../functions/cells';
import { CellFault, type FaultCode } from '../../functions/faults';

const CODES: readonly string[] = ['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NAME?', '#REF!', '#NULL!'] satisfies FaultCode[];

/** An argument as the engine hands it over, in plain values: a blank or an argument left out is null, a reference its cells. */
export function toArgument(variant: FunctionVariantType): Argument {
  if (variant.isReferenceObject()) return toCells((variant as BaseReferenceObject).toArrayValueObject());
  if (variant.isArray()) return toCells(variant as ArrayValueObject);
  return toCell(variant as BaseValueObject);
}

/** The cells of an array, row by row, with the numbers in full. */
export function toCells(array: ArrayValueObject): Cells {
  return Array.from({ length: array.getRowCount() }, (_, row) =>
    Array.from({ length: array.getColumnCount() }, (_unused, column) => toCell(array.get(row, column))));
}

/** One value; null if blank, a fault with its message (if it has one) for an error. */
export function toCell(value: Nullable<BaseValueObject>): Cell {
  if (!value || value.isNull()) return null;
  if (value.isError()) return toFault(value as ErrorValueObject);
  if (value.isNumber() || value.isString() || value.isBoolean()) return value.getValue() as Cell;
  return new CellFault('#VALUE!', 'a function without arguments');
}

/** The engine has more error values than a cell function may give; those come in as `#VALUE!`, with their name as the message. */
function toFault(error: ErrorValueObject): CellFault {
  const code = CODES.find((candidate) => candidate === error.getErrorType()) as FaultCode | undefined;
  return code ? new CellFault(code, error.getErrorContent()) : new CellFault('#VALUE!', `the error ${error.getErrorType()}`);
}

/** A result of a cell function, as the engine wants it. */
export function toEngineValue(result: CellResult): BaseValueObject {
  if (!Array.isArray(result)) return toEngineCell(result);
  if (result.length === 1 && result[0].length === 1) return toEngineCell(result[0][0]);
  return ArrayValueObject.create({
    calculateValueList: result.map((row) => row.map(toEngineCell)),
    rowCount: result.length,
    columnCount: result[0].length,
    unitId: '',
    sheetId: '',
    row: -1,
    column: -1,
  });
}

/** One cell, as the engine wants it. An error value carries its message along while the formula is computed. */
export function toEngineCell(cell: Cell): BaseValueObject {
  if (cell === null || cell === undefined) return NullValueObject.create();
  if (cell instanceof CellFault) return ErrorValueObject.create(cell.code as ErrorType, cell.message);
  if (typeof cell === 'boolean') return BooleanValueObject.create(cell);
  if (typeof cell === 'string') return StringValueObject.create(cell);
  return NumberValueObject.create(cell);
}
