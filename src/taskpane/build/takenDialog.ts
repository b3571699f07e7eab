import { button, element } from '../dom';
import { freeName, sheetNameProblem } from './sheetName';

/** What to do where a sheet of the name already holds something. */
export type TakenChoice = { readonly do: 'replace' } | { readonly do: 'rename'; readonly name: string } | { readonly do: 'leave' };

let made = 0;

/**
 * Asks, in a dialog over the page, what becomes of the sheet that is there. Escape leaves everything as it is.
 * @param place where the dialog stands in the page.
 * @param sheet the name that is taken.
 * @param taken the names of all sheets.
 */
export function askAboutTaken(place: HTMLElement, sheet: string, taken: readonly string[]): Promise<TakenChoice> {
  const id = `taken-${made += 1}`;
  const name = element('input', { attributes: { id: `${id}-name`, type: 'text', autocomplete: 'off', spellcheck: 'false', 'aria-describedby': `${id}-problem` } });
  const problem = element('p', { class: 'rp-refuse', attributes: { id: `${id}-problem`, role: 'status' } });
  const dialog = element('dialog', { class: 'rp-dialog', attributes: { 'aria-labelledby': `${id}-title`, 'aria-describedby': `${id}-words` } });
  name.value = freeName(sheet, taken);
  let choice: TakenChoice = { do: 'leave' };
  const close = (chosen: TakenChoice): void => {
    choice = chosen;
    dialog.close();
  };
  const rename = (): void => {
    const wrong = sheetNameProblem(name.value, taken);
    problem.textContent = wrong ?? '';
    name.setAttribute('aria-invalid', String(wrong !== undefined));
    if (wrong) name.focus();
    else close({ do: 'rename', name: name.value.trim() });
  };
  name.addEventListener('keydown', (event) => {
    if (event.key === 'Enter') rename();
  });
  dialog.append(
    element('h2', { attributes: { id: `${id}-title` }, children: [`“${sheet}” already holds something`] }),
    element('p', { attributes: { id: `${id}-words` }, children: ['Give the new sheet another name, and both stay. If you replace the sheet, all that it holds is gone, and in Excel formulas on other sheets that read it lose it (#REF!).'] }),
    element('label', { class: 'rp-label', attributes: { for: name.id }, children: ['Name of the new sheet'] }),
    name,
    problem,
    element('div', {
      class: 'rp-ways',
      children: [
        button('Build under this name', rename, { class: 'rp-main' }),
        button('Replace the sheet', () => close({ do: 'replace' }), { class: 'rp-grave' }),
        button('Leave it as it is', () => close({ do: 'leave' })),
      ],
    }),
  );
  place.append(dialog);
  dialog.showModal();
  name.focus();
  name.select();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => {
      dialog.remove();
      resolve(choice);
    }, { once: true });
  });
}
