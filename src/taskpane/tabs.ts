import { button, element } from './dom';

/** One tab: its word, and what it shows. */
export interface Tab {
  readonly id: string;
  readonly label: string;
  readonly content: HTMLElement;
}

/** Tabs above their panels. The arrow keys, Home and End open them; Tab goes on into the panel. */
export class Tabs {
  readonly list: HTMLElement;
  readonly panels: readonly HTMLElement[];
  private readonly buttons: readonly HTMLButtonElement[];
  private open = '';

  /**
   * @param label what the tabs choose between, for screen readers.
   * @param onShow told which tab is open, each time another one is.
   */
  constructor(label: string, private readonly tabs: readonly Tab[], private readonly onShow: (id: string) => void) {
    this.buttons = tabs.map(({ id, label: word }) => button(word, () => this.show(id), {
      class: 'rp-tab',
      attributes: { id: `pane-tab-${id}`, role: 'tab', 'aria-controls': `pane-panel-${id}` },
    }));
    this.panels = tabs.map(({ id, content }) => element('div', {
      class: 'rp-panel',
      attributes: { id: `pane-panel-${id}`, role: 'tabpanel', 'aria-labelledby': `pane-tab-${id}` },
      children: [content],
    }));
    this.list = element('div', { class: 'rp-tabs', attributes: { role: 'tablist', 'aria-label': label }, children: this.buttons });
    this.list.addEventListener('keydown', (event) => this.move(event));
  }

  get shown(): string {
    return this.open;
  }

  show(id: string): void {
    if (id === this.open) return;
    this.open = id;
    this.tabs.forEach((tab, i) => {
      const isOpen = tab.id === id;
      this.buttons[i].setAttribute('aria-selected', String(isOpen));
      this.buttons[i].tabIndex = isOpen ? 0 : -1;
      this.panels[i].hidden = !isOpen;
    });
    this.onShow(id);
  }

  /** Puts the focus on the open tab. */
  focus(): void {
    this.buttons[this.tabs.findIndex(({ id }) => id === this.open)].focus();
  }

  private move(event: KeyboardEvent): void {
    const last = this.tabs.length - 1;
    const now = this.tabs.findIndex(({ id }) => id === this.open);
    const ways: Readonly<Record<string, number | undefined>> = { ArrowRight: now === last ? 0 : now + 1, ArrowLeft: now === 0 ? last : now - 1, Home: 0, End: last };
    const next = ways[event.key];
    if (next === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
    event.preventDefault();
    this.show(this.tabs[next].id);
    this.focus();
  }
}
