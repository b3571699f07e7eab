import { OfficeMockObject } from 'office-addin-mock';
import { CellFault } from '../../src/functions/faults';
import { Outcomes } from '../../src/hosts/excel/outcomes';
import { ExcelSelection, type RunExcel } from '../../src/hosts/excel/selection';
import type { SelectedCell } from '../../src/hosts/selection';

type Handler = (event: object) => Promise<void>;

interface CellData {
  readonly address: string;
  readonly formulas: unknown[][];
  readonly values?: unknown[][];
  readonly valueTypes?: unknown[][];
}

const EVENTS = ['onSelectionChanged', 'onActivated', 'onCalculated', 'onChanged'] as const;

/** Excel as far as the follower sees it. The mock refuses a property that was not loaded, or not synced after loading. */
class StandInExcel {
  readonly handlers = new Map<string, Handler>();
  readonly options: Excel.RunOptions[] = [];
  syncs = 0;
  /** Errors that the next batches end with. */
  failures: unknown[] = [];
  cell: CellData = { address: 'Sheet1!B4', formulas: [['=PROVE.FIT(A1:A9,B1:B9,2)']] };
  anchor: { formulas: unknown[][] } | undefined;

  readonly run = (async (options: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<unknown>) => {
    this.options.push(options);
    const failure = this.failures.shift();
    if (failure) throw failure;
    return batch(this.context());
  }) as RunExcel;

  async fire(event: typeof EVENTS[number], args: object = {}): Promise<void> {
    await this.handlers.get(event)?.(args);
  }

  private context(): Excel.RequestContext {
    const anchor = new OfficeMockObject({ host: 'excel', formulas: this.anchor?.formulas ?? [['']], isNullObject: !this.anchor }, 'excel' as never);
    // As in Office.js, whether an object is null is known after a sync without being loaded.
    anchor.load('isNullObject');
    const cell = new OfficeMockObject({ values: [[1]], valueTypes: [['Double']], ...this.cell, getSpillParentOrNullObject: () => anchor }, 'excel' as never);
    const event = (name: string): object => ({ add: (handler: Handler) => { this.handlers.set(name, handler); } });
    const context = {
      workbook: { getActiveCell: () => cell, worksheets: Object.fromEntries(EVENTS.map((name) => [name, event(name)])) },
      sync: async () => {
        this.syncs += 1;
        await Promise.all([cell.sync(), anchor.sync()]);
      },
    };
    return context as unknown as Excel.RequestContext;
  }
}

function following(excel: StandInExcel, outcomes = new Outcomes()) {
  const cells: SelectedCell[] = [];
  const problems: string[] = [];
  const follower = new ExcelSelection(excel.run, outcomes);
  const listener = { onCell: (cell: SelectedCell) => cells.push(cell), onProblem: (words: string) => problems.push(words) };
  return { cells, problems, start: () => follower.follow(listener) };
}

const EDITING = Object.assign(new Error('batch refused'), { code: 'InvalidOperationInCellEditMode' });

test('the mock refuses a property that was not loaded', async () => {
  const cell = new OfficeMockObject({ address: 'Sheet1!A1' }, 'excel' as never) as unknown as { address: string };
  expect(cell.address).toContain('not loaded');
});

test('the active cell is told when following starts', async () => {
  const { cells, problems, start } = following(new StandInExcel());
  await start();
  expect(cells).toEqual([{ address: 'B4', formula: '=PROVE.FIT(A1:A9,B1:B9,2)' }]);
  expect(problems).toEqual([]);
});

test('a change of the selection costs one sync and tells the new cell', async () => {
  const excel = new StandInExcel();
  const { cells, start } = following(excel);
  await start();
  const before = excel.syncs;
  excel.cell = { address: "'Run ! 1'!C5", formulas: [[12]] };
  await excel.fire('onSelectionChanged');
  expect(excel.syncs - before).toBe(1);
  expect(cells.at(-1)).toEqual({ address: 'C5', formula: 12 });
});

test.each(['onActivated', 'onCalculated', 'onChanged'] as const)('%s reads the cell again', async (event) => {
  const excel = new StandInExcel();
  const { cells, start } = following(excel);
  await start();
  await excel.fire(event, { changeType: 'RangeEdited' });
  expect(cells).toHaveLength(2);
});

test('events that come during a read ask for one more read, not one each', async () => {
  const excel = new StandInExcel();
  const { cells, start } = following(excel);
  await start();
  await Promise.all(Array.from({ length: 10 }, () => excel.fire('onSelectionChanged')));
  await new Promise((resolve) => { setTimeout(resolve, 0); });
  expect(cells).toHaveLength(3);
});

test('a cell of a spilled result gives the formula of its anchor', async () => {
  const excel = new StandInExcel();
  excel.cell = { address: 'Sheet1!B6', formulas: [[0.25]] };
  excel.anchor = { formulas: [['=PROVE.FIT(A1:A9,B1:B9,2)']] };
  const { cells, start } = following(excel);
  await start();
  expect(cells[0]).toEqual({ address: 'B6', formula: '=PROVE.FIT(A1:A9,B1:B9,2)' });
});

test('an error in the cell is told with the words of its function', async () => {
  const excel = new StandInExcel();
  excel.cell = { ...excel.cell, values: [['#VALUE!']], valueTypes: [['Error']] };
  const outcomes = new Outcomes();
  outcomes.record({ id: 'FIT', address: 'Sheet1!B4', fault: new CellFault('#VALUE!', 'degree: found 9') });
  const { cells, start } = following(excel, outcomes);
  await start();
  expect(cells[0].error).toEqual({ code: '#VALUE!', message: 'PROVE.FIT: degree: found 9' });
});

test('an error of unknown cause is told with its code alone', async () => {
  const excel = new StandInExcel();
  excel.cell = { ...excel.cell, formulas: [['=1/0']], values: [['#DIV/0!']], valueTypes: [['Error']] };
  const { cells, start } = following(excel);
  await start();
  expect(cells[0].error).toEqual({ code: '#DIV/0!', message: '' });
});

test('text that looks like an error is none', async () => {
  const excel = new StandInExcel();
  excel.cell = { ...excel.cell, formulas: [['#N/A']], values: [['#N/A']], valueTypes: [['String']] };
  const { cells, start } = following(excel);
  await start();
  expect(cells[0].error).toBeUndefined();
});

test.each(['RowInserted', 'RowDeleted', 'ColumnInserted', 'CellDeleted'])('%s forgets the words, since cells have moved', async (changeType) => {
  const excel = new StandInExcel();
  excel.cell = { ...excel.cell, values: [['#VALUE!']], valueTypes: [['Error']] };
  const outcomes = new Outcomes();
  outcomes.record({ id: 'FIT', address: 'Sheet1!B4', fault: new CellFault('#VALUE!', 'degree: found 9') });
  const { cells, start } = following(excel, outcomes);
  await start();
  await excel.fire('onChanged', { changeType });
  expect(cells.at(-1)?.error).toEqual({ code: '#VALUE!', message: '' });
});

test('an open cell is explained, and read as soon as it is left', async () => {
  const excel = new StandInExcel();
  const { cells, problems, start } = following(excel);
  await start();
  excel.failures = [EDITING];
  await excel.fire('onSelectionChanged');
  expect(problems).toEqual(['Excel is editing a cell. Press Enter or Esc to leave it; the pane then follows the selection again.']);
  expect(excel.options.at(-1)).toEqual({ delayForCellEdit: true });
  expect(cells).toHaveLength(2);
});

test.each(['ItemNotFound', 'InvalidSelection', 'AccessDenied', 'HostIsBusy', 'GeneralException'])('%s reaches the pane in words, not as the message of Office', async (code) => {
  const excel = new StandInExcel();
  const { problems, start } = following(excel);
  await start();
  excel.failures = [Object.assign(new Error('inner detail'), { code })];
  await excel.fire('onSelectionChanged');
  expect(problems).toHaveLength(1);
  expect(problems[0]).toMatch(/^(The|Excel) .*\.$/);
  expect(problems[0]).not.toContain('inner detail');
});

test('a failure does not end the following', async () => {
  const excel = new StandInExcel();
  const { cells, start } = following(excel);
  await start();
  excel.failures = [new Error('lost')];
  await excel.fire('onSelectionChanged');
  await excel.fire('onSelectionChanged');
  expect(cells).toHaveLength(2);
});

test('a failure at the start reaches the pane in words', async () => {
  const excel = new StandInExcel();
  excel.failures = [Object.assign(new Error('x'), { code: 'AccessDenied' })];
  const { cells, problems, start } = following(excel);
  await start();
  expect(cells).toEqual([]);
  expect(problems[0]).toContain('protected view');
});
