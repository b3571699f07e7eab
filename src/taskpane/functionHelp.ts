import type { CellError } from '../hosts/selection';
import { button, element } from './dom';
import { errorCallout } from './errorCallout';
import { helpEntry } from './helpEntry';
import { helpIndex } from './helpIndex';
import { helpTexts } from './helpTexts';

/** What the pane shows: the selected cell, the PROVE functions of its formula, and the error it holds. */
export interface FunctionHelpState {
  /** Address as the user knows it, like "B4". */
  readonly cell?: string;
  /** Ids without the `PROVE.`; empty shows the list of all functions. */
  readonly functionIds: readonly string[];
  readonly error?: CellError;
}

/** The help pane in an element of a page. */
export interface FunctionHelp {
  /** Follows the selection. A function that a person opened from the list stays open while cells without one are selected. */
  show(state: FunctionHelpState): void;
  /** Opens the help of one function; without an id, the list of all. */
  open(id?: string): void;
}

/**
 * Puts the function help into `root`, the list of all functions first.
 * @param onOpen told when a person opens a function, or goes back to the list (no id).
 */
export function createFunctionHelp(root: HTMLElement, onOpen?: (id?: string) => void): FunctionHelp {
  const place = element('p', { class: 'fh-cell' });
  const fault = element('div', { class: 'fh-fault', attributes: { role: 'status' } });
  const body = element('div', { class: 'fh-body' });
  const index = helpIndex((id) => goTo([id]));
  let shown: string | undefined;
  let opened: readonly string[] = [];
  let selected = '';

  const render = (ids: readonly string[]): void => {
    const key = ids.join(' ');
    if (key === shown) return;
    shown = key;
    body.replaceChildren(...(ids.length === 0 ? [index.element] : [backButton(), ...ids.map(entryOf)]));
  };
  const goTo = (ids: readonly string[]): void => {
    const left = (shown ?? '').split(' ')[0];
    opened = ids;
    render(ids);
    if (ids.length > 0) showFromTop(body);
    else index.focus(left);
    onOpen?.(ids[0]);
  };
  const backButton = (): HTMLElement => button('‹ All functions', () => goTo([]), { class: 'fh-back' });

  root.classList.add('function-help');
  root.replaceChildren(place, fault, body);
  render([]);
  return {
    show({ cell, functionIds, error }) {
      place.replaceChildren(...(cell ? ['Cell ', element('strong', { children: [cell] })] : []));
      fault.replaceChildren(...(error ? errorCallout(error, cell) : []));
      const now = [cell, ...functionIds].join(' ');
      if (now === selected) return;
      selected = now;
      render(functionIds.length > 0 ? functionIds : opened);
    },
    open(id) {
      opened = id ? [id] : [];
      render(opened);
    },
  };
}

/** Puts the focus on the heading, with the button above it in view. */
function showFromTop(body: HTMLElement): void {
  body.querySelector<HTMLElement>('h2')?.focus({ preventScroll: true });
  body.firstElementChild?.scrollIntoView({ block: 'nearest' });
}

function entryOf(id: string): HTMLElement {
  const help = helpTexts.find((candidate) => candidate.id === id);
  if (help) return helpEntry(help);
  return element('article', {
    class: 'fh-entry',
    children: [
      element('h2', { attributes: { tabindex: '-1' }, children: [`PROVE.${id}`] }),
      element('p', { children: [`There is no function of this name. Look for the one you want among all functions.`] }),
    ],
  });
}
