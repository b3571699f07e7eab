import type { IWorkbookData } from '@univerjs/core';
import type { Grid } from '../hosts/grid/createGrid';
import type { Autosave } from './autosave';
import { askForFirstWorkbook, type PutAside } from './firstDialog';
import { showNotice } from './notice';
import type { Shelf } from './shelf';
import type { StoredWorkbook } from './storedWorkbook';

/** What exchanging workbooks needs; without a shelf nothing can be put aside. */
interface Parts {
  readonly grid: Grid;
  readonly shelf?: Shelf;
  readonly autosave?: Autosave;
  /** A fresh first workbook, with an id no other has. */
  readonly first: () => IWorkbookData;
  /** Told if putting aside or bringing back fails; the workbook on the page is then the one before. */
  readonly failed: (error: unknown) => void;
}

/** Exchanges the workbook on the page: for the first one, or for the one put aside. */
export class Exchange {
  constructor(private readonly parts: Parts) {}

  /** Asks, then does what was chosen. */
  start(): void {
    this.ask().catch(this.parts.failed);
  }

  private async ask(): Promise<void> {
    const { grid, shelf } = this.parts;
    const aside = await this.aside();
    const sheets = sheetNames(grid.snapshot());
    const choice = await askForFirstWorkbook(sheets, { canKeep: shelf !== undefined, ...(aside ? { aside: summary(aside) } : {}) });
    if (choice === 'first') await this.openFirst();
    if (choice === 'back' && aside) await this.bringBack(aside);
  }

  private async openFirst(): Promise<void> {
    const { shelf, first } = this.parts;
    const next = first();
    await this.swapFor(next);
    await this.show(next);
    if (!shelf) return;
    showNotice('The first workbook is open. Yours is put aside in this browser.', {
      label: 'Bring back my last workbook',
      take: () => void this.bringBackLast().catch(this.parts.failed),
    });
  }

  private async bringBackLast(): Promise<void> {
    const aside = await this.aside();
    if (aside) await this.bringBack(aside);
  }

  private async bringBack(aside: StoredWorkbook): Promise<void> {
    await this.swapFor(aside.workbook);
    await this.show(aside.workbook);
    showNotice('Your last workbook is back. The one that was open is put aside in its place.');
  }

  /** Puts the workbook on the page aside. A save still to come would put it back. */
  private async swapFor(next: IWorkbookData): Promise<void> {
    const { grid, shelf, autosave } = this.parts;
    autosave?.cancel();
    await shelf?.swap(grid.snapshot(), next);
  }

  private async show(workbook: IWorkbookData): Promise<void> {
    await this.parts.grid.open(workbook);
    await this.parts.grid.calculate();
    this.parts.grid.focus();
  }

  private async aside(): Promise<StoredWorkbook | undefined> {
    const found = await this.parts.shelf?.read('previous.v1');
    return found?.kind === 'workbook' ? found.stored : undefined;
  }
}

function summary({ savedAt, workbook }: StoredWorkbook): PutAside {
  return { savedAt, sheets: sheetNames(workbook) };
}

function sheetNames(workbook: IWorkbookData): string[] {
  return workbook.sheetOrder.map((id) => workbook.sheets[id].name ?? id);
}
