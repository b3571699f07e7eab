/** Milliseconds after which the grid takes a tab that was pressed for dragged, and a little more. */
const LONG_PRESS = 560;

/**
 * Keeps a sheet's name in editing until a long press is over. A double click starts one whose end the grid overlooks while the name
 * is edited: were the editing over sooner, the tab would be dragged without a button held, and open nothing until the page is
 * loaded anew.
 */
export function outlastLongPress(container: HTMLElement): void {
  let pressed = -LONG_PRESS;
  container.addEventListener('pointerdown', ({ timeStamp }) => {
    pressed = timeStamp;
  }, { capture: true });
  container.addEventListener('focusout', (event) => {
    const { target, timeStamp } = event;
    const left = pressed + LONG_PRESS - timeStamp;
    if (left <= 0 || !(target instanceof HTMLElement) || !target.matches('[data-u-comp="slide-tab-item"] [contenteditable]')) return;
    event.stopPropagation();
    setTimeout(() => target.dispatchEvent(new FocusEvent('focusout', { bubbles: true })), left);
  }, { capture: true });
}
