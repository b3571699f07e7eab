import { byId } from './page';

/** Below this width of the window the pane is a drawer over the grid. Also in workbench.css. */
const NARROW = matchMedia('(max-width: 719px)');

/** The help pane at the right, and its button in the header. */
export class Pane {
  private readonly pane = byId('pane');
  private readonly button = byId<HTMLButtonElement>('pane-button');

  constructor() {
    this.button.addEventListener('click', () => this.show(Boolean(this.pane.hidden)));
    this.pane.addEventListener('keydown', (event) => {
      if (event.key !== 'Escape' || !NARROW.matches) return;
      this.show(false);
      this.button.focus();
    });
    NARROW.addEventListener('change', () => this.show(!NARROW.matches));
    this.show(!NARROW.matches);
  }

  private show(shown: boolean): void {
    this.pane.hidden = !shown;
    this.button.setAttribute('aria-expanded', String(shown));
  }
}
