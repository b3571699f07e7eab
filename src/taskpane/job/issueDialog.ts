import { button, element } from '../dom';

let made = 0;

/** Shows what speaks against issuing, and asks whether it is done all the same; Escape is no. */
export function askToIssue(place: HTMLElement, against: readonly string[]): Promise<boolean> {
  const id = `issue-${made += 1}`;
  const dialog = element('dialog', { class: 'rp-dialog', attributes: { 'aria-labelledby': `${id}-title` } });
  let answer = false;
  const close = (issue: boolean) => (): void => {
    answer = issue;
    dialog.close();
  };
  dialog.append(
    element('h2', { attributes: { id: `${id}-title` }, children: ['This speaks against an issue copy now'] }),
    element('ul', { class: 'rp-against', children: against.map((words) => element('li', { children: [words] })) }),
    element('div', { class: 'rp-ways', children: [
      button('Leave it for now', close(false), { class: 'rp-main' }),
      button('Make the copy all the same', close(true), { class: 'rp-grave' }),
    ] }),
  );
  place.append(dialog);
  dialog.showModal();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => {
      dialog.remove();
      resolve(answer);
    }, { once: true });
  });
}
