import type { Review } from '../../review/reviewFinding';
import { countWords } from '../../review/reviewWords';
import type { ReadSheet } from '../../worksheets/readSheet';
import { button, element } from '../dom';
import { reasonOf } from '../reason';
import { findingsView } from './findingsView';
import { reviewFacts } from './reviewFacts';

/** What files are reviewed with. */
export interface FileReviewParts {
  readonly review: (sheets: readonly ReadSheet[]) => Review;
  /** Reads a workbook file; throws if it is none. */
  readonly readWorkbook: (bytes: Uint8Array) => Promise<readonly ReadSheet[]>;
}

interface Tally {
  sound: number;
  found: number;
  failed: number;
}

/** Workbook files (.xlsx), chosen or dropped, reviewed one after the other; a file that cannot be read is told, and the others go on. */
export class FileReviews {
  readonly element: HTMLElement;
  private readonly words = element('p', { class: 'rp-quiet', attributes: { role: 'status' } });
  private readonly work = element('div', { class: 'rp-file-work' });
  private readonly list = element('div', { class: 'rp-file-list' });
  private readonly waiting: File[] = [];
  private total = 0;
  private isRunning = false;

  constructor(private readonly parts: FileReviewParts) {
    const input = element('input', { attributes: { type: 'file', accept: '.xlsx', multiple: '', hidden: '', 'aria-label': 'Workbook files' } });
    input.addEventListener('change', () => {
      this.take([...(input.files ?? [])]);
      input.value = '';
    });
    this.element = element('section', { class: 'rp-files', attributes: { 'aria-label': 'Other workbooks' }, children: [
      element('h3', { children: ['Other workbooks'] }),
      element('p', { class: 'rp-help', children: ['Choose .xlsx files, or drop them here. They are read in this pane only and stay as they are.'] }),
      button('Review files…', () => input.click()),
      input, this.words, this.work, this.list,
    ] });
    this.element.addEventListener('dragover', (event) => {
      event.preventDefault();
      this.element.classList.add('rp-over');
    });
    this.element.addEventListener('dragleave', () => this.element.classList.remove('rp-over'));
    this.element.addEventListener('drop', (event) => {
      event.preventDefault();
      this.element.classList.remove('rp-over');
      this.take([...(event.dataTransfer?.files ?? [])]);
    });
  }

  /** Reviews these too, after those that wait. */
  take(files: readonly File[]): void {
    if (files.length === 0) return;
    this.waiting.push(...files);
    this.total += files.length;
    if (!this.isRunning) void this.run();
  }

  private async run(): Promise<void> {
    this.isRunning = true;
    this.list.replaceChildren();
    const tally: Tally = { sound: 0, found: 0, failed: 0 };
    const bar = element('progress', { attributes: { 'aria-label': 'Workbooks reviewed' } });
    const stop = button('Stop', () => { this.waiting.length = 0; });
    this.work.replaceChildren(bar, stop);
    let done = 0;
    for (let file = this.waiting.shift(); file; file = this.waiting.shift()) {
      this.words.textContent = `Reviewing ${done + 1} of ${this.total}: ${file.name}`;
      bar.max = this.total;
      bar.value = done;
      // The page shows that, and hears “Stop”, before the review holds it up.
      await new Promise((resolve) => { setTimeout(resolve); });
      this.list.append(await this.outcomeOf(file, tally));
      done += 1;
    }
    const stopped = this.total - done;
    const hadFocus = document.activeElement === stop;
    this.work.replaceChildren();
    this.words.textContent = summary(tally, stopped);
    this.total = 0;
    this.isRunning = false;
    if (hadFocus) this.element.querySelector('button')?.focus();
  }

  private async outcomeOf(file: File, tally: Tally): Promise<HTMLElement> {
    try {
      const review = this.parts.review(await this.parts.readWorkbook(await contentOf(file)));
      const { findings } = review;
      tally[findings.length === 0 ? 'sound' : 'found'] += 1;
      return element('details', { class: findings.length === 0 ? '' : 'rp-has-findings', children: [
        element('summary', { children: [element('strong', { children: [file.name] }), ` ${countWords(findings)}`] }),
        reviewFacts(review), ...findingsView(findings),
      ] });
    } catch (error) {
      tally.failed += 1;
      return element('p', { class: 'rp-refuse', children: [element('strong', { children: [file.name] }), ` could not be reviewed: ${reasonOf(error)}`] });
    }
  }
}

/** The bytes of a file that may be a workbook. */
async function contentOf(file: File): Promise<Uint8Array> {
  if (!/\.xlsx$/i.test(file.name)) throw new Error('found another kind of file; expected a workbook (.xlsx)');
  if (file.size === 0) throw new Error('found an empty file; expected a workbook (.xlsx)');
  return new Uint8Array(await file.arrayBuffer());
}

function summary({ sound, found, failed }: Tally, stopped: number): string {
  const parts = [
    `${sound} without findings`, `${found} with findings`,
    ...(failed > 0 ? [`${failed} could not be reviewed`] : []),
    ...(stopped > 0 ? [`${stopped} left out`] : []),
  ];
  const count = sound + found + failed;
  return `${count === 1 ? '1 workbook' : `${count} workbooks`}: ${parts.join(', ')}.`;
}
