import { byId } from './page';

/** Says in the header whether the work is safe. Only a change between saved and not saved is spoken, not every edit. */
export class SavedStatus {
  private readonly place = byId('saved');
  private readonly words = this.place.querySelector<HTMLElement>('[role=status]')!;

  saving(): void {
    this.place.dataset.state = 'saving';
  }

  saved(): void {
    this.say('saved', 'Saved in this browser');
  }

  failed(error: unknown): void {
    const full = error instanceof DOMException && error.name === 'QuotaExceededError';
    const reason = full ? 'the browser has no room left' : error instanceof Error ? error.message : String(error);
    this.say('failed', `Not saved: ${reason}`);
  }

  /** Another tab holds the workbook; saving from here would overwrite its work. */
  elsewhere(): void {
    this.say('failed', 'Open in another tab: changes here are not saved');
  }

  private say(state: string, text: string): void {
    this.place.dataset.state = state;
    this.place.title = text;
    if (this.words.textContent !== text) this.words.textContent = text;
  }
}
