import { button, element } from '../taskpane/dom';
import { byId } from './page';

/** Something the notice offers to do. */
export interface NoticeWay {
  readonly label: string;
  readonly take: () => void;
}

/** Shows a line under the header until it is closed or its offer is taken. */
export function showNotice(text: string, way?: NoticeWay): void {
  const place = byId('notice');
  const close = (): void => {
    place.hidden = true;
    place.replaceChildren();
  };
  const words = element('p', { attributes: { role: 'status' } });
  place.replaceChildren(words);
  if (way) {
    place.append(button(way.label, () => {
      close();
      way.take();
    }));
  }
  place.append(button('×', close, { class: 'notice-close', attributes: { 'aria-label': 'Close the notice' } }));
  place.hidden = false;
  words.textContent = text;
}
