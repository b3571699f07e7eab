import { button, element } from '../taskpane/dom';
import { byId } from './page';

/** A workbook that can be brought back, as the dialog tells of it. */
export interface PutAside {
  readonly savedAt: string;
  readonly sheets: readonly string[];
}

/** What a person chose in the dialog. */
export type FirstChoice = 'cancel' | 'first' | 'back';

/** What can happen to the workbook on the page. */
export interface Keeping {
  /** False if the browser's storage is out of reach, so that nothing can be put aside. */
  readonly canKeep: boolean;
  readonly aside?: PutAside;
}

/** Asks before the workbook is exchanged: for the first one, or for the one put aside last. */
export function askForFirstWorkbook(sheets: readonly string[], keeping: Keeping): Promise<FirstChoice> {
  const dialog = byId<HTMLDialogElement>('first-dialog');
  const choose = (choice: FirstChoice) => (): void => dialog.close(choice);
  dialog.replaceChildren(
    element('h2', { attributes: { id: 'first-title' }, children: ['Open the first workbook again?'] }),
    element('div', { attributes: { id: 'first-words' }, children: words(sheets, keeping) }),
    element('div', {
      class: 'dialog-ways',
      children: [
        button('Open the first workbook', choose('first'), { class: 'main-way' }),
        ...(keeping.aside ? [button('Bring back my last workbook', choose('back'))] : []),
        button('Cancel', choose('cancel'), { attributes: { autofocus: '' } }),
      ],
    }),
  );
  dialog.returnValue = 'cancel';
  dialog.showModal();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => resolve((dialog.returnValue || 'cancel') as FirstChoice), { once: true });
  });
}

function words(sheets: readonly string[], { canKeep, aside }: Keeping): HTMLElement[] {
  const paragraph = (text: string): HTMLElement => element('p', { children: [text] });
  if (!canKeep) return [paragraph(`Your workbook (${listed(sheets)}) is lost then: this browser keeps nothing for this page.`)];
  const mine = paragraph(`Your workbook (${listed(sheets)}) leaves the page and is put aside in this browser. You can bring it back with “Bring back my last workbook”.`);
  if (!aside) return [mine];
  return [
    mine,
    paragraph(`Only one workbook is kept aside. Opening the first workbook replaces the one put aside on ${when(aside.savedAt)} (${listed(aside.sheets)}), which is then lost. Bringing that one back puts yours in its place instead, and nothing is lost.`),
  ];
}

function listed(sheets: readonly string[]): string {
  const named = sheets.slice(0, 4).join(', ');
  return sheets.length > 4 ? `${named} and ${sheets.length - 4} more` : named;
}

function when(iso: string): string {
  return new Date(iso).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}
