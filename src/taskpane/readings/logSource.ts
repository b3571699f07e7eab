import { button, element } from '../dom';

let made = 0;

/** Where a log comes from: a file that is dropped or chosen, or text that is pasted. */
export class LogSource {
  readonly element: HTMLElement;
  private readonly file = element('input', { attributes: { type: 'file', accept: '.csv,.txt,.tsv,.log,.dat,.asc,text/plain,text/csv', hidden: '', 'aria-label': 'File of a logger' } });
  private readonly choose = button('Choose a file…', () => this.file.click());
  private readonly area: HTMLTextAreaElement;

  /** @param onText takes pasted text; `onFile` a file. */
  constructor(private readonly onFile: (file: File) => void, onText: (text: string) => void) {
    const id = `log-text-${made += 1}`;
    this.area = element('textarea', { attributes: { id, rows: '4', spellcheck: 'false', autocomplete: 'off' } });
    this.file.addEventListener('change', () => {
      const file = this.file.files?.[0];
      // Else the same file, written on, would be no change.
      if (file) onFile(file);
      this.file.value = '';
    });
    const read = (): void => { if (this.area.value.trim() !== '') onText(this.area.value); else this.area.focus(); };
    const zone = element('div', {
      class: 'rp-drop',
      children: [element('p', { children: ['Drop the file of a logger here: .csv or .txt, with any delimiter and decimal mark.'] }), this.choose, this.file],
    });
    this.takeDrops(zone);
    this.element = element('div', {
      children: [
        zone,
        element('details', {
          class: 'rp-paste',
          children: [
            element('summary', { children: ['Paste text or a column instead'] }),
            element('label', { class: 'rp-label', attributes: { for: id }, children: ['A reading a line, or lines of a log'] }),
            this.area,
            button('Read this text', read),
          ],
        }),
      ],
    });
  }

  focus(): void {
    this.choose.focus();
  }

  private takeDrops(zone: HTMLElement): void {
    const over = (isOver: boolean) => (event: Event): void => {
      event.preventDefault();
      zone.classList.toggle('rp-over', isOver);
    };
    zone.addEventListener('dragenter', over(true));
    zone.addEventListener('dragover', over(true));
    zone.addEventListener('dragleave', over(false));
    zone.addEventListener('drop', (event) => {
      over(false)(event);
      const file = event.dataTransfer?.files[0];
      if (file) this.onFile(file);
    });
  }
}
