import { byId } from './page';

/** A part of the page that F6 moves to. */
interface Region {
  /** Asked anew each time: the grid makes its parts again with each workbook. */
  find(): HTMLElement | null | undefined;
  /** Moves the focus into it; false if nothing in it can take the focus. */
  enter(element: HTMLElement): boolean;
}

const FOCUSABLE = 'button:enabled, input:enabled, a[href], [tabindex="0"]';

/** What the regions need of the grid. */
interface Cells {
  focus(): void;
  /** Takes what is being typed into its cell. */
  finishEditing(): void;
}

/**
 * F6 and Shift+F6 move between header, toolbar, cells, sheet tabs, error line and side pane: inside the grid, Tab belongs to the
 * cells.
 */
export function moveByRegions(cells: Cells): void {
  const grid = byId('grid');
  const around: Region = { find: () => grid, enter: () => (cells.focus(), true) };
  const regions: readonly Region[] = [
    { find: () => document.querySelector<HTMLElement>('.bar'), enter: first },
    { find: () => grid.querySelector<HTMLElement>('[role="toolbar"]'), enter: first },
    around,
    { find: () => grid.querySelector<HTMLElement>('footer'), enter: openTab },
    { find: () => byId('strip'), enter: first },
    { find: () => byId('pane'), enter: openTab },
  ];
  const current = (): number => {
    const has = (region: Region): boolean => region.find()?.contains(document.activeElement) ?? false;
    const inner = regions.findIndex((region) => region !== around && has(region));
    if (inner >= 0) return inner;
    return has(around) ? regions.indexOf(around) : 0;
  };
  // Caught on its way down: the grid stops the keys it does not know.
  addEventListener('keydown', (event) => {
    if (event.key !== 'F6' || event.ctrlKey || event.altKey || event.metaKey || document.querySelector('dialog[open]')) return;
    event.preventDefault();
    cells.finishEditing();
    const step = event.shiftKey ? regions.length - 1 : 1;
    let index = current();
    for (let tried = 0; tried < regions.length; tried += 1) {
      index = (index + step) % regions.length;
      const element = regions[index].find();
      if (element && !element.closest('[inert]') && regions[index].enter(element)) return;
    }
  }, { capture: true });
}

function first(element: HTMLElement): boolean {
  const target = [...element.querySelectorAll<HTMLElement>(FOCUSABLE)].find((candidate) => candidate.checkVisibility());
  target?.focus();
  return target !== undefined;
}

function openTab(element: HTMLElement): boolean {
  const tab = element.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]');
  tab?.focus();
  return tab !== null;
}
