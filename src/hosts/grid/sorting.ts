import type { Injector } from '@univerjs/core';
import { ArrayValueObject, type BaseValueObject, IFunctionService } from '@univerjs/engine-formula';

/**
 * Makes SORT and SORTBY sort a copy. As they come they sort the cells that the engine keeps of the range, so that every other formula
 * of the same calculation reads that range in the wrong order. To be called once an engine, when its own functions are there.
 */
export function mendSorting(injector: Injector): void {
  for (const name of ['SORT', 'SORTBY']) {
    const executor = injector.get(IFunctionService).getExecutor(name);
    if (!executor) throw new Error(`the engine has no function ${name} yet`);
    const original = executor.calculate.bind(executor);
    executor.calculate = (...variants: BaseValueObject[]) => original(...variants.map(copied));
  }
}

function copied(variant: BaseValueObject): BaseValueObject {
  if (!variant?.isArray()) return variant;
  const array = variant as ArrayValueObject;
  return ArrayValueObject.create({
    calculateValueList: array.getArrayValue().map((row) => [...row]),
    rowCount: array.getRowCount(),
    columnCount: array.getColumnCount(),
    unitId: array.getUnitId(),
    sheetId: array.getSheetId(),
    row: array.getCurrentRow(),
    column: array.getCurrentColumn(),
  });
}
