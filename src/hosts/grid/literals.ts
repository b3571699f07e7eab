import { ArrayValueObject, type BaseValueObject, ErrorType, ErrorValueObject, NumberValueObject, StringValueObject, ValueObjectFactory } from '@univerjs/engine-formula';
import { splitOutside } from './splitOutside';
import { typedNumber } from './typedNumber';

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

let mended = false;

/**
 * Makes the engine read the numbers written into a formula. It takes `2.50`, `1E-7` and `{0.010;…}` for text, since they are not
 * spelt as it would print them, and it cuts text in an array at each comma. Text that is calculated with counts as a number only
 * if it is a plain one: `2,001` would be taken for thousands, and `3-4` for a date. Done once for all engines of the process.
 */
export function mendLiterals(): void {
  if (mended) return;
  mended = true;
  const original = ValueObjectFactory.create;
  ValueObjectFactory.create = (rawValue, isIgnoreNumberPattern) => {
    if (typeof rawValue === 'string' && NUMBER.test(rawValue.trim())) return numberOf(rawValue.trim());
    const value = original.call(ValueObjectFactory, rawValue, isIgnoreNumberPattern || (typeof rawValue === 'string' && rawValue.includes(',')));
    return typeof rawValue === 'string' && value.isArray() ? arrayOf(rawValue.trim()) : value;
  };
  StringValueObject.prototype.convertToNumberObjectValue = function convert(this: StringValueObject) {
    const number = typedNumber(this.getValue());
    return number ? NumberValueObject.create(number.v, number.z) : ErrorValueObject.create(ErrorType.VALUE);
  };
}

function numberOf(text: string): BaseValueObject {
  const value = Number(text);
  return Number.isFinite(value) ? NumberValueObject.create(value) : ErrorValueObject.create(ErrorType.NUM);
}

/** `{1,2;"a,b",TRUE}`: commas part the columns and semicolons the rows, except within quotes. */
function arrayOf(text: string): BaseValueObject {
  const rows = splitOutside(text.slice(1, -1), ';').map((row) => splitOutside(row, ',').map((cell) => ValueObjectFactory.create(cell.trim(), true) as BaseValueObject));
  const columnCount = rows[0].length;
  if (rows.some((row) => row.length !== columnCount)) return ErrorValueObject.create(ErrorType.VALUE);
  return ArrayValueObject.create({ calculateValueList: rows, rowCount: rows.length, columnCount, unitId: '', sheetId: '', row: -1, column: -1 });
}
