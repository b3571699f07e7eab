import type { Workbook } from '@univerjs/core';
import { IUniverInstanceService, type Injector } from '@univerjs/core';
import { FormulaDataModel, FormulaExecuteStageType, ICalculateFormulaService } from '@univerjs/engine-formula';
import type { CellCode } from './cellData';

/** Where a formula stands: unit (workbook), sheet, and row and column counted from 0. */
export interface FormulaPlace {
  readonly unitId: string;
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

interface Entry {
  readonly place: FormulaPlace;
  readonly code: string;
  readonly message: string;
  /** The formula that failed: a message belongs to it, not to whatever stands in the cell later. */
  readonly formula: string | null;
  /** The error is a cell of the formula's result rather than the whole of it. */
  readonly within: boolean;
  /** Which calculation the message is from. */
  readonly calculation: number;
}

const stores = new Set<CellMessages>();

/**
 * Why the formula in a cell gave its error, in the words of the cell function that failed.
 * Undefined if the cell holds no such error (any more).
 */
export function messageAt(unitId: string, sheetId: string, row: number, column: number): string | undefined {
  for (const store of stores) {
    const message = store.messageAt({ unitId, sheetId, row, column });
    if (message !== undefined) return message;
  }
  return undefined;
}

/** The error messages of one engine, by the cell whose formula raised them. The engine's cells themselves hold only the code. */
export class CellMessages {
  private readonly entries = new Map<string, Entry>();
  private calculation = 0;
  private readonly subscription: { unsubscribe(): void };

  constructor(private readonly injector: Injector) {
    this.subscription = injector.get(ICalculateFormulaService).executionInProgressListener$.subscribe(({ stage }) => {
      if (stage === FormulaExecuteStageType.START) this.startCalculation();
    });
    stores.add(this);
  }

  /** How many messages are kept; for the test that they do not pile up. */
  get size(): number {
    return this.entries.size;
  }

  /** The formula at `place` failed while it was computed, wholly or in a cell of its result. */
  failed(place: FormulaPlace, fault: { readonly code: CellCode; readonly message: string }, within = false): void {
    const { calculation } = this;
    this.entries.set(keyOf(place), { place, code: fault.code, message: fault.message, formula: this.formulaAt(place), within, calculation });
  }

  /** A cell function gave a result. A message from the same calculation stays: it is from another function of the same formula. */
  passed(place: FormulaPlace): void {
    const entry = this.entries.get(keyOf(place));
    if (entry && entry.calculation !== this.calculation) this.entries.delete(keyOf(place));
  }

  messageAt(place: FormulaPlace): string | undefined {
    const entry = this.entries.get(keyOf(place));
    return entry && this.holds(entry) ? entry.message : undefined;
  }

  dispose(): void {
    this.subscription.unsubscribe();
    this.entries.clear();
    stores.delete(this);
  }

  private startCalculation(): void {
    this.calculation += 1;
    for (const [key, entry] of this.entries) if (!this.holds(entry)) this.entries.delete(key);
  }

  /** Whether the cell still has the formula that failed, and the error. Cleared, retyped and moved cells have not. */
  private holds({ place, code, formula, within }: Entry): boolean {
    if (formula === null || this.formulaAt(place) !== formula) return false;
    const workbook = this.injector.get(IUniverInstanceService).getUnit<Workbook>(place.unitId);
    return within || workbook?.getSheetBySheetId(place.sheetId)?.getCellMatrix().getValue(place.row, place.column)?.v === code;
  }

  private formulaAt({ unitId, sheetId, row, column }: FormulaPlace): string | null {
    return this.injector.get(FormulaDataModel).getFormulaStringByCell(row, column, sheetId, unitId) ?? null;
  }
}

function keyOf({ unitId, sheetId, row, column }: FormulaPlace): string {
  return `${unitId} ${sheetId} ${row} ${column}`;
}
