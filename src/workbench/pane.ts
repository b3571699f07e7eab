import { byId } from './page';

/** Below this width of the window the pane is a drawer over the grid. Also in workbench.css. */
const NARROW = matchMedia('(max-width: 999px)');

/** The side pane at the right, and its button in the header. */
export class Pane {
  private readonly pane = byId('pane');
  /** Inert is set on the parts of the workbook, not on their landmark: the page keeps its main part. */
  private readonly covered = [byId('grid'), byId('strip')];
  private readonly button = byId<HTMLButtonElement>('pane-button');

  constructor() {
    this.button.addEventListener('click', () => this.toggle());
    // Caught on its way down, wherever the focus is; an open dialog has its own use for Escape.
    addEventListener('keydown', (event) => {
      if (event.key === 'Escape' && this.isDrawer() && !document.querySelector('dialog[open]')) this.close();
    }, { capture: true });
    this.pane.parentElement!.addEventListener('pointerdown', (event) => {
      if (this.isDrawer() && !this.pane.contains(event.target as Node)) this.close();
    });
    NARROW.addEventListener('change', () => this.show(!NARROW.matches));
    this.show(!NARROW.matches);
  }

  private isDrawer(): boolean {
    return NARROW.matches && !this.pane.hidden;
  }

  private toggle(): void {
    this.show(Boolean(this.pane.hidden));
    if (this.isDrawer()) this.pane.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]')?.focus();
  }

  /** Uncovers the sheet, where the pane covers it. */
  giveWay(): void {
    if (this.isDrawer()) this.show(false);
  }

  private close(): void {
    this.show(false);
    this.button.focus();
  }

  private show(shown: boolean): void {
    this.pane.hidden = !shown;
    this.button.setAttribute('aria-expanded', String(shown));
    // What the drawer covers, whole or in part, is out of reach until it closes.
    for (const part of this.covered) part.inert = this.isDrawer();
  }
}
