import type { Entry, SheetPlan } from '../../worksheets/plan';
import type { SheetContent, SheetEntry, SheetHost } from '../sheetHost';
import { fillSheet } from './fillSheet';
import { readSheet } from './readSheet';
import { sameName } from './rollBack';
import type { RunExcel } from './selection';
import { sheetWords } from './sheetWords';
import { type FileSource, workbookFile } from './workbookFile';
import { writeSheet } from './writeSheet';

/** Reading waits until a cell is no longer open for editing; what changes the workbook is refused at once, with words. */
const READING: Excel.RunOptions = { delayForCellEdit: true };

/** The workbook in Excel that the pane stands beside. */
export class ExcelSheets implements SheetHost {
  private readonly listeners: (() => void)[] = [];
  private following = false;

  /**
   * `supports` says whether this Excel has a version of the set ExcelApi that is above the manifest's; `document` gives Office's
   * document once it is there.
   */
  constructor(
    private readonly run: RunExcel,
    private readonly supports: (version: string) => boolean,
    private readonly document?: () => FileSource,
  ) {}

  sheets(): Promise<readonly SheetEntry[]> {
    return this.worded('', READING, async (context) => {
      const sheets = context.workbook.worksheets;
      sheets.load('items/name');
      await context.sync();
      const used = sheets.items.map((sheet) => sheet.getUsedRangeOrNullObject(true));
      for (const range of used) range.load('address');
      await context.sync();
      return sheets.items.map(({ name }, i) => ({ name, empty: used[i].isNullObject }));
    });
  }

  async write(plan: SheetPlan, { replace = false }: { readonly replace?: boolean } = {}): Promise<void> {
    await writeSheet(this.run, plan, replace);
  }

  read(sheet: string): Promise<SheetContent> {
    return this.worded(sheet, READING, (context) => readSheet(context, sheet, this.supports('1.13')));
  }

  remove(sheet: string): Promise<void> {
    return this.worded(sheet, {}, async (context) => {
      const sheets = context.workbook.worksheets;
      sheets.load('items/name,items/visibility');
      await context.sync();
      const visible = sheets.items.filter(({ visibility }) => visibility === 'Visible');
      if (visible.length === 1 && sameName(visible[0].name, sheet)) {
        throw new Error(`“${visible[0].name}” is the only sheet in sight, and Excel keeps one. Add a sheet first.`);
      }
      sheets.getItem(sheet).delete();
      await context.sync();
    });
  }

  fill(sheet: string, entries: readonly Entry[]): Promise<void> {
    return this.worded(sheet, {}, (context) => fillSheet(context, sheet, entries));
  }

  async save(): Promise<Uint8Array> {
    // Waits until Excel is there, and until no cell is open, since what is being typed would not be in the file.
    await this.active();
    if (!this.document) throw new Error('This workbook cannot be saved as a file from here. Use Save As in Excel.');
    try {
      return await workbookFile(this.document());
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      throw new Error(`Excel did not give the file of the workbook: ${why}. Try again, or use Save As in Excel.`, { cause: error });
    }
  }

  select(sheet: string, address: string): Promise<void> {
    return this.worded(sheet, {}, async (context) => {
      const found = context.workbook.worksheets.getItem(sheet);
      found.load('name,visibility');
      await context.sync();
      if (found.visibility !== 'Visible') throw new Error(`The sheet “${found.name}” is hidden. Right-click a sheet tab and choose Unhide.`);
      found.activate();
      found.getRange(address).select();
      await context.sync();
    });
  }

  active(): Promise<string> {
    return this.worded('', READING, async (context) => {
      const sheet = context.workbook.worksheets.getActiveWorksheet();
      sheet.load('name');
      await context.sync();
      return sheet.name;
    });
  }

  onChange(listener: () => void): void {
    this.listeners.push(listener);
    void this.follow();
  }

  /** Asks Excel once to tell of changes; if it refuses, the next thing that is asked of it tries again. */
  private async follow(): Promise<void> {
    if (this.following) return;
    this.following = true;
    const tell = async (): Promise<void> => { for (const listener of this.listeners) listener(); };
    try {
      await this.run(READING, async (context) => {
        const sheets = context.workbook.worksheets;
        sheets.onChanged.add(tell);
        sheets.onCalculated.add(tell);
        sheets.onActivated.add(tell);
        sheets.onAdded.add(tell);
        sheets.onDeleted.add(tell);
        if (this.supports('1.17')) sheets.onNameChanged.add(tell);
        await context.sync();
      });
    } catch {
      this.following = false;
    }
  }

  /** Runs a batch; what fails rejects with words for the user. */
  private async worded<T>(sheet: string, options: Excel.RunOptions, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
    try {
      const result = await this.run(options, batch);
      if (this.listeners.length > 0) void this.follow();
      return result;
    } catch (error) {
      throw new Error(sheetWords(error, sheet), { cause: error });
    }
  }
}
