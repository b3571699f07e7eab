/** @jest-environment jsdom */
import { Tabs } from '../../src/taskpane/tabs';

function mounted() {
  const shown: string[] = [];
  const tabs = new Tabs('Parts', ['one', 'two', 'three'].map((id) => ({ id, label: id, content: document.createElement('p') })), (id) => shown.push(id));
  document.body.replaceChildren(tabs.list, ...tabs.panels);
  tabs.show('one');
  const press = (key: string): void => { document.activeElement!.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true })); };
  const visible = (): string[] => tabs.panels.filter(({ hidden }) => !hidden).map(({ id }) => id);
  return { tabs, shown, press, visible };
}

test('one panel is shown, and only its tab is reached with Tab', () => {
  const { tabs, visible } = mounted();
  tabs.show('two');
  expect(visible()).toEqual(['pane-panel-two']);
  expect([...tabs.list.children].map((tab) => [tab.getAttribute('aria-selected'), (tab as HTMLElement).tabIndex])).toEqual([['false', -1], ['true', 0], ['false', -1]]);
});

test('each tab names the panel it controls, and each panel is named by its tab', () => {
  const { tabs } = mounted();
  for (const [i, tab] of [...tabs.list.children].entries()) {
    expect(document.getElementById(tab.getAttribute('aria-controls')!)).toBe(tabs.panels[i]);
    expect(document.getElementById(tabs.panels[i].getAttribute('aria-labelledby')!)).toBe(tab);
  }
});

test('arrow keys go round, Home and End to the ends, and the focus goes along', () => {
  const { tabs, press, shown } = mounted();
  tabs.focus();
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowLeft', 'Home', 'End']) press(key);
  expect(shown).toEqual(['one', 'two', 'three', 'one', 'three', 'one', 'three']);
  expect(document.activeElement?.id).toBe('pane-tab-three');
});

test('other keys, and arrow keys held with Alt, are left to the page', () => {
  const { tabs, shown } = mounted();
  tabs.focus();
  for (const init of [{ key: 'a' }, { key: 'ArrowRight', altKey: true }]) {
    const event = new KeyboardEvent('keydown', { ...init, bubbles: true, cancelable: true });
    document.activeElement!.dispatchEvent(event);
    expect(event.defaultPrevented).toBe(false);
  }
  expect(shown).toEqual(['one']);
});

test('a click opens a tab', () => {
  const { tabs, visible } = mounted();
  (tabs.list.children[2] as HTMLElement).click();
  expect(visible()).toEqual(['pane-panel-three']);
});
