import type { SheetHost } from '../hosts/sheetHost';
import { download } from './download';
import { fileNameFor } from './fileName';
import { showNotice } from './notice';
import { byId } from './page';

/** Lets the button of the header save the workbook as a file. `settle` takes what is still being typed into its cell. */
export function offerSaving(host: SheetHost, settle: () => void): void {
  const button = byId<HTMLButtonElement>('save-button');
  button.addEventListener('click', () => {
    settle();
    void save(host, button);
  });
  button.disabled = false;
}

async function save(host: SheetHost, button: HTMLButtonElement): Promise<void> {
  const words = button.textContent;
  button.disabled = true;
  button.textContent = 'Saving the file…';
  try {
    const [name, bytes] = [await fileNameFor(host), await host.save()];
    download(name, bytes);
    showNotice(`“${name}” is in your browser’s downloads. Your work also stays on this page.`);
  } catch (error) {
    showNotice(error instanceof Error ? error.message : String(error), { label: 'Try again', take: () => void save(host, button) });
  } finally {
    button.disabled = false;
    button.textContent = words;
    button.focus();
  }
}
