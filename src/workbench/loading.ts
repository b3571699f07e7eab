import { button } from '../taskpane/dom';
import { byId } from './page';

/** The stages of loading, in order, with what is said while each is on its way. */
const STAGES = ['Loading the program …', 'Setting up the grid …', 'Registering the functions …', 'Calculating …', 'Ready'] as const;

/** The card that covers the page until the first computed values are on screen, or says why they are not. */
export class Loading {
  private readonly card = byId('loading');
  private readonly words = byId('loading-words');
  private readonly bar = byId<HTMLProgressElement>('loading-progress');
  private readonly ways = byId('loading-ways');
  /** Puts stored work aside, so that the next start opens the first workbook. Set once storage is at hand. */
  putAside?: () => Promise<void>;

  /** One more stage is done; after the last one the page is uncovered. */
  stageDone(): void {
    this.bar.value += 1;
    this.words.textContent = STAGES[this.bar.value];
    if (this.bar.value === this.bar.max) this.card.hidden = true;
  }

  /** Says what went wrong and offers ways out: once more, or with the first workbook. */
  fail(error: unknown): void {
    console.error(error);
    this.card.classList.add('failed');
    this.bar.hidden = true;
    this.words.textContent = `The workbench could not be opened: ${reasonOf(error)}`;
    this.ways.replaceChildren(button('Try again', () => location.reload()));
    const putAside = this.putAside;
    if (!putAside) return;
    const hint = document.createElement('p');
    hint.textContent = 'If it fails again, start with the first workbook. Your stored work is put aside in this browser, not deleted.';
    this.ways.append(button('Reset to first workbook', () => void putAside().then(() => location.reload())), hint);
  }
}

function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  if (error.name === 'ChunkLoadError') return 'a part of the program did not arrive. Check that its server is still running (npm start).';
  return error.message;
}
