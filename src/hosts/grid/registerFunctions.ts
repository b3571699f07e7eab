import metadata from '@generated/functions.json';
import type { Injector } from '@univerjs/core';
import { BaseFunction, type BaseValueObject, IFunctionService } from '@univerjs/engine-formula';
import { callFunction } from '../../functions/call';
import type { CellResult } from '../../functions/cells';
import { CellFault } from '../../functions/faults';
import { mendComparisons } from './comparisons';
import { copyNamesWithSheet } from './copiedNames';
import { mendLiterals } from './literals';
import { mendNames } from './localNames';
import { mendLoops } from './loops';
import { CellMessages, type FormulaPlace } from './messages';
import { mendSorting } from './sorting';
import { toArgument, toEngineCell, toEngineValue } from './values';

/** How every cell function is called in a formula. */
export const NAMESPACE = 'PROVE';

/**
 * Makes every cell function known to an engine, as `PROVE.<id>`; formulas already read are read anew.
 * Returns the messages of the errors they give, to be disposed with the engine.
 */
export function registerCellFunctions(injector: Injector): CellMessages {
  mendComparisons();
  mendLiterals();
  mendSorting(injector);
  mendNames(injector);
  copyNamesWithSheet(injector);
  const messages = new CellMessages(injector);
  mendLoops(injector, messages);
  const service = injector.get(IFunctionService);
  const functions = metadata.functions.map(({ id }) => new CellFunction(id, messages));
  service.registerExecutors(...functions);
  service.deleteFormulaAstCacheKey(...functions.map(({ name }) => name));
  return messages;
}

/** One cell function as the engine calls it. Nothing is thrown: that would stop the whole calculation. */
class CellFunction extends BaseFunction {
  constructor(private readonly id: string, private readonly messages: CellMessages) {
    super(`${NAMESPACE}.${id}`);
  }

  /** Text in quotes stays text, though it look like a date or a percentage. */
  override isArgumentsIgnoreNumberPattern(): boolean {
    return true;
  }

  override calculate(...variants: BaseValueObject[]): BaseValueObject {
    try {
      const result = callFunction(this.id, variants.map(toArgument));
      const fault = firstFault(result);
      if (fault) this.messages.failed(this.place(), fault, true);
      else this.messages.passed(this.place());
      return toEngineValue(result);
    } catch (error) {
      const fault = error instanceof CellFault ? error : new CellFault('#VALUE!', `${this.name} failed inside (${String(error)})`);
      this.messages.failed(this.place(), fault);
      return toEngineCell(fault);
    }
  }

  private place(): FormulaPlace {
    return { unitId: this.unitId ?? '', sheetId: this.subUnitId ?? '', row: this.row, column: this.column };
  }
}

function firstFault(result: CellResult): CellFault | undefined {
  if (!Array.isArray(result)) return undefined;
  for (const row of result) for (const cell of row) if (cell instanceof CellFault) return cell;
  return undefined;
}
