/**
 * A stand-in for Excel: calls are queued and carried out in order at a sync, which stops at the first that fails and leaves
 * what came before it. A property can be read only after it was loaded and synced.
 */
import type { RunExcel } from '../../../src/hosts/excel/selection';
import { sheetsObject } from './fakeSheets';
import { emptySheet, type FakeSheet, type FakeWorkbook, refusal, type Results } from './fakeState';

/** Which call or sync fails, and how. Calls and syncs count from 1, from when the fault is set. */
export interface Fault {
  readonly code: string;
  readonly call?: number;
  readonly sync?: number;
  /** True if everything is carried out and only the answer gets lost. */
  readonly late?: boolean;
  /** True if every later sync fails too. */
  readonly lasting?: boolean;
}

export class FakeExcel {
  readonly workbook: FakeWorkbook = { sheets: [emptySheet('{1}', 'Sheet1')], active: '{1}' };
  readonly options: Excel.RunOptions[] = [];
  readonly handlers = new Map<string, () => Promise<void>>();
  /** The calls carried out since the last `reset`, as words. */
  calls: string[] = [];
  syncs = 0;
  results: Results = new Map();
  fault: Fault | undefined;
  /** What someone else does to the workbook just before a sync. */
  meanwhile: ((sync: number) => void) | undefined;
  private lastId = 1;
  private queue: { readonly words: string; readonly carryOut: () => void }[] = [];

  readonly run = (async (options: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<unknown>) => {
    this.options.push(options);
    this.queue = [];
    const result = await batch(this.context());
    // As in Office: what is still queued goes out at the end.
    if (this.queue.length > 0) await this.sync();
    return result;
  }) as RunExcel;

  /** Puts a call into the queue. */
  ask(words: string, carryOut: () => void): void {
    this.queue.push({ words, carryOut });
  }

  add(name: string): FakeSheet {
    this.lastId += 1;
    const sheet = emptySheet(`{${this.lastId}}`, name);
    this.workbook.sheets.push(sheet);
    return sheet;
  }

  /** Counts from here. */
  reset(fault?: Fault): void {
    this.calls = [];
    this.syncs = 0;
    this.fault = fault;
  }

  private async sync(): Promise<void> {
    const { fault, queue } = this;
    this.queue = [];
    this.syncs += 1;
    this.meanwhile?.(this.syncs);
    const failsNow = fault?.sync !== undefined && (this.syncs === fault.sync || (fault.lasting === true && this.syncs > fault.sync));
    if (fault && failsNow && !fault.late) throw refusal(fault.code);
    for (const { words, carryOut } of queue) {
      this.calls.push(words);
      if (fault && fault.call === this.calls.length) throw refusal(fault.code, words);
      carryOut();
    }
    if (fault && failsNow) throw refusal(fault.code);
  }

  private context(): Excel.RequestContext {
    const application = {
      suspendApiCalculationUntilNextSync: () => this.ask('Application.suspendApiCalculationUntilNextSync', () => undefined),
      suspendScreenUpdatingUntilNextSync: () => this.ask('Application.suspendScreenUpdatingUntilNextSync', () => undefined),
    };
    const context = { workbook: { application, worksheets: sheetsObject(this) }, sync: () => this.sync() };
    return context as unknown as Excel.RequestContext;
  }
}
