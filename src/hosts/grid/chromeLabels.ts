/** What the grid's commands are called where they stand as icons only. */
const COMMAND_NAMES: Readonly<Record<string, string>> = {
  'univer.command.undo': 'Undo',
  'univer.command.redo': 'Redo',
  'sheet.command.set-once-format-painter': 'Copy the format',
  'sheet.command.clear-selection-all': 'Clear contents and formats',
  'sheet.command.set-range-font-family': 'Font',
  'sheet.command.set-range-fontsize': 'Font size',
  'sheet.command.set-range-font-increase': 'Larger font',
  'sheet.command.set-range-font-decrease': 'Smaller font',
  'sheet.command.set-range-bold': 'Bold',
  'sheet.command.set-range-italic': 'Italic',
  'sheet.command.set-range-underline': 'Underline',
  'sheet.command.set-range-stroke': 'Strikethrough',
  'sheet.command.set-range-text-color': 'Text colour',
  'sheet.command.set-background-color': 'Cell colour',
  'sheet.command.set-border-basic': 'Borders',
  'sheet.command.set-horizontal-text-align': 'Horizontal alignment',
  'sheet.command.set-vertical-text-align': 'Vertical alignment',
  'sheet.command.set-text-wrap': 'Text wrapping',
  'sheet.command.set-text-rotation': 'Text rotation',
  'sheet.command.add-worksheet-merge': 'Merge cells',
  'sheet.command.numfmt.set.currency': 'Currency format',
  'sheet.command.numfmt.set.percent': 'Percent format',
  'sheet.command.numfmt.add.decimal.command': 'More decimals',
  'sheet.command.numfmt.subtract.decimal.command': 'Fewer decimals',
};

/**
 * Gives the icons and boxes around the cells names, roles and a place in the tab order, and keeps doing so as the grid redraws
 * them: it comes with few of its own.
 */
export function labelChrome(container: HTMLElement): void {
  const label = (): void => {
    for (const part of found(container, '[data-u-command]')) labelCommand(part);
    labelParts(container);
    for (const trigger of found(container, ':is(div, a)[aria-haspopup][aria-expanded]')) labelTrigger(trigger);
    for (const track of found(container, '[role="track"]')) labelZoom(track);
    for (const canvas of found(container, 'canvas[tabindex="1"]')) canvas.tabIndex = -1;
  };
  label();
  new MutationObserver(label).observe(container, { childList: true, subtree: true, attributes: true, attributeFilter: ['aria-expanded', 'tabindex'] });
  container.addEventListener('keydown', pressByKey);
}

/** The toolbar is there twice; the hidden copy only measures how much of it fits. */
function found(container: HTMLElement, selector: string): HTMLElement[] {
  return [...container.querySelectorAll<HTMLElement>(selector)].filter((part) => !part.closest('[aria-hidden="true"]'));
}

function name(part: Element | null | undefined, text: string): void {
  if (part && part.getAttribute('aria-label') !== text) part.setAttribute('aria-label', text);
}

/** A button, a list with an icon or a box, or an icon with a list beside it. */
function labelCommand(part: HTMLElement): void {
  const text = COMMAND_NAMES[part.dataset.uCommand ?? ''];
  if (!text) return;
  const box = part.querySelector('input');
  const list = part.querySelector('[aria-haspopup]');
  if (box || !list) {
    name(box ?? part, text);
    return;
  }
  name(list, `${text}: choose`);
  const icon = part.firstElementChild as HTMLElement;
  if (!icon.contains(list)) makeButton(icon, text);
}

function labelParts(container: HTMLElement): void {
  const at = (selector: string): HTMLElement | undefined => found(container, selector)[0];
  name(at('[data-u-comp="ribbon-toolbar"]'), 'Formatting');
  name(at('[data-u-comp="defined-name"] input'), 'Name box: the selected cell');
  name(at('[data-u-comp="defined-name"] [aria-haspopup]'), 'Defined names');
  name(at('[data-u-comp="formula-bar"] > :last-child > button'), 'Stop the calculation');
  const [add, all, left, right] = found(container, 'footer button[data-u-comp="sheet-bar-append-button"]');
  name(add, 'Add a sheet');
  name(all, 'All sheets');
  name(left, 'Scroll the sheets to the left');
  name(right, 'Scroll the sheets to the right');
  for (const editor of found(container, '[data-u-comp="editor"]')) {
    editor.setAttribute('role', 'textbox');
    name(editor, 'Cell entry');
  }
  for (const side of found(container, 'aside')) side.setAttribute('role', 'presentation');
  for (const panel of found(container, '[data-u-comp="sidebar"][role="complementary"]')) panel.setAttribute('role', 'region');
  for (const panel of found(container, '[data-u-comp="sidebar"][aria-expanded]')) {
    // Its state is no property of a region; the style sheet needs it to take the closed panel out of the tab order.
    panel.dataset.open = panel.getAttribute('aria-expanded')!;
    panel.removeAttribute('aria-expanded');
  }
  const [notifications, messages] = found(container, 'section[aria-live]');
  name(notifications, 'Notifications of the grid');
  name(messages, 'Messages of the grid');
}

/** What opens a list is a plain box to the browser. Its state belongs on the control inside, if it has one. */
function labelTrigger(trigger: HTMLElement): void {
  const inner = trigger.querySelector('input, button');
  if (!inner) {
    makeButton(trigger);
    return;
  }
  if (inner.matches('input')) inner.setAttribute('role', 'combobox');
  for (const attribute of ['aria-haspopup', 'aria-expanded', 'aria-controls']) {
    const value = trigger.getAttribute(attribute);
    if (value === null) inner.removeAttribute(attribute);
    else inner.setAttribute(attribute, value);
    trigger.removeAttribute(attribute);
  }
}

function makeButton(part: HTMLElement, text?: string): void {
  if (part.getAttribute('role') !== 'button') {
    part.setAttribute('role', 'button');
    part.tabIndex = 0;
  }
  if (text) name(part, text);
}

/** The slider answers only to the pointer; the buttons beside it and the list of sizes do the same by keyboard. */
function labelZoom(track: HTMLElement): void {
  track.setAttribute('role', 'presentation');
  const rail = track.parentElement!;
  rail.dataset.part = 'zoom-rail';
  rail.setAttribute('aria-hidden', 'true');
  for (const part of track.querySelectorAll<HTMLElement>('a, button')) part.tabIndex = -1;
  name(rail.previousElementSibling, 'Zoom out');
  name(rail.nextElementSibling, 'Zoom in');
  rail.parentElement!.lastElementChild!.setAttribute('title', 'Zoom');
}

/** Enter and Space press what is a button by role only. Lists of commands take these keys themselves. */
function pressByKey(event: KeyboardEvent): void {
  const target = event.target as HTMLElement;
  if ((event.key !== 'Enter' && event.key !== ' ') || !target.matches('[role="button"]:not(button, [data-slot="dropdown-menu-trigger"])')) return;
  event.preventDefault();
  event.stopPropagation();
  target.click();
}
