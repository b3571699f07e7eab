import { cellFunctionsIn } from '../../functions/formulaNames';
import type { CellError, SelectedCell, SelectionListener, SelectionSource } from '../selection';
import { isCellEdit, wordsFor } from './errorWords';
import type { Outcomes } from './outcomes';

/** Runs a batch of Office calls, as `Excel.run` does. */
export type RunExcel = <T>(options: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

/** Follows the selection in Excel: one read of the active cell at each change, and after each calculation. */
export class ExcelSelection implements SelectionSource {
  private reading = false;
  private again = false;

  constructor(private readonly run: RunExcel, private readonly outcomes: Outcomes) {}

  async follow(listener: SelectionListener): Promise<void> {
    const refresh = (): Promise<void> => this.refresh(listener);
    try {
      await this.run({ delayForCellEdit: true }, async (context) => {
        const sheets = context.workbook.worksheets;
        sheets.onSelectionChanged.add(refresh);
        sheets.onActivated.add(refresh);
        sheets.onCalculated.add(refresh);
        sheets.onChanged.add((change) => {
          if (change.changeType !== 'RangeEdited') this.outcomes.clear();
          return refresh();
        });
        await context.sync();
      });
    } catch (error) {
      listener.onProblem(wordsFor(error));
      return;
    }
    await refresh();
  }

  /** Events come faster than reads: while one read is under way, any number of events asks for one more. */
  private async refresh(listener: SelectionListener): Promise<void> {
    this.again = true;
    if (this.reading) return;
    this.reading = true;
    while (this.again) {
      this.again = false;
      await this.tell(listener);
    }
    this.reading = false;
  }

  private async tell(listener: SelectionListener): Promise<void> {
    try {
      listener.onCell(await this.read(false));
    } catch (error) {
      listener.onProblem(wordsFor(error));
      if (isCellEdit(error)) await this.tellAfterEdit(listener);
    }
  }

  private async tellAfterEdit(listener: SelectionListener): Promise<void> {
    try {
      listener.onCell(await this.read(true));
    } catch (error) {
      listener.onProblem(wordsFor(error));
    }
  }

  private read(delayForCellEdit: boolean): Promise<SelectedCell> {
    return this.run({ delayForCellEdit }, async (context) => {
      const cell = context.workbook.getActiveCell();
      cell.load('address,formulas,values,valueTypes');
      const anchor = cell.getSpillParentOrNullObject();
      anchor.load('formulas');
      await context.sync();
      const formula: unknown = anchor.isNullObject ? cell.formulas[0][0] : anchor.formulas[0][0];
      const code: unknown = cell.valueTypes[0][0] === 'Error' ? cell.values[0][0] : undefined;
      return {
        address: cell.address.slice(cell.address.lastIndexOf('!') + 1),
        formula,
        ...(typeof code === 'string' && { error: this.errorOf(code, cell.address, formula) }),
      };
    });
  }

  private errorOf(code: string, address: string, formula: unknown): CellError {
    return { code, message: this.outcomes.messageAt(address, cellFunctionsIn(formula)) };
  }
}
