import { byId } from './page';

/** A part of the page that F6 moves to. */
interface Region {
  readonly element: HTMLElement;
  /** Moves the focus into it; false if nothing in it can take the focus. */
  enter(): boolean;
}

const FOCUSABLE = 'button:enabled, input:enabled, a[href], [tabindex="0"]';

/**
 * F6 and Shift+F6 move between header, grid, error line and help: inside the grid, Tab belongs to the cells.
 * @param focusGrid gives the keyboard to the grid.
 */
export function moveByRegions(focusGrid: () => void): void {
  const grid = byId('grid');
  const regions: readonly Region[] = [
    inside(document.querySelector<HTMLElement>('.bar')!),
    { element: grid, enter: () => (focusGrid(), true) },
    inside(byId('strip')),
    inside(byId('pane')),
  ];
  // Caught on its way down: the grid stops the keys it does not know.
  addEventListener('keydown', (event) => {
    if (event.key !== 'F6' || event.ctrlKey || event.altKey || event.metaKey || document.querySelector('dialog[open]')) return;
    event.preventDefault();
    const step = event.shiftKey ? regions.length - 1 : 1;
    let index = Math.max(0, regions.findIndex(({ element }) => element.contains(document.activeElement)));
    for (let tried = 0; tried < regions.length; tried += 1) {
      index = (index + step) % regions.length;
      if (regions[index].enter()) return;
    }
  }, { capture: true });
}

function inside(element: HTMLElement): Region {
  return {
    element,
    enter() {
      const target = [...element.querySelectorAll<HTMLElement>(FOCUSABLE)].find((candidate) => candidate.checkVisibility());
      target?.focus();
      return target !== undefined;
    },
  };
}
