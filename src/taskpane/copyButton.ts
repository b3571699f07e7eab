import { button, element } from './dom';

const SHOWN_FOR_MS = 2500;

/**
 * A button that copies the text of an element. Where the page may not write to the clipboard, it selects the text and
 * says which keys copy it. The outcome stands in the button's own place, so nothing moves.
 */
export function copyButton(target: HTMLElement, what: string): HTMLElement {
  const said = element('span', { class: 'fh-copied', attributes: { role: 'status' } });
  let timer: ReturnType<typeof setTimeout> | undefined;
  const press = button('Copy', () => {
    void copyText(target).then((copied) => {
      said.textContent = copied ? 'Copied' : 'Selected. Press Ctrl+C (⌘C on a Mac).';
      clearTimeout(timer);
      timer = setTimeout(() => { said.textContent = ''; }, copied ? SHOWN_FOR_MS : 3 * SHOWN_FOR_MS);
    });
  }, { class: 'fh-copy', attributes: { 'aria-label': `Copy ${what}` } });
  return element('span', { class: 'fh-copying', children: [press, said] });
}

/** True if the text reached the clipboard; otherwise it is left selected. */
async function copyText(target: HTMLElement): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(target.textContent ?? '');
    return true;
  } catch {
    return selectAndCopy(target);
  }
}

function selectAndCopy(target: HTMLElement): boolean {
  const selection = target.ownerDocument.getSelection();
  const range = target.ownerDocument.createRange();
  range.selectNodeContents(target);
  selection?.removeAllRanges();
  selection?.addRange(range);
  try {
    // Deprecated, but the only way to copy in a pane whose frame was not given the clipboard permission.
    return document.execCommand('copy');
  } catch {
    return false;
  }
}
