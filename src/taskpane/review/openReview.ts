import type { Review } from '../../review/reviewFinding';
import { countWords } from '../../review/reviewWords';
import type { ReadSheet } from '../../worksheets/readSheet';
import { button, element } from '../dom';
import { reasonOf } from '../reason';
import { findingsView } from './findingsView';
import { reviewFacts } from './reviewFacts';

/** Milliseconds of a review after which it is not done again by itself with every change. */
const SLOW = 400;

/** What the view is made with. */
interface OpenReviewParts {
  readonly review: (sheets: readonly ReadSheet[]) => Review;
  readonly goTo: (sheet: string, address: string) => void;
  /** Told when there is a review to be written down, or none. */
  readonly ready: (isReady: boolean) => void;
}

/** Whether anything on a sheet can be reviewed: it was built here, or holds a record. */
function isReviewed({ names }: ReadSheet): boolean {
  return names.some(({ name }) => /^(readings|value|typed|record|certificate|comparison|job)_/i.test(name));
}

/** The review of the open workbook: the outcome, what was looked at, and the findings, each a way to its cell. */
export class OpenReview {
  readonly element: HTMLElement;
  private readonly outcome = element('p', { class: 'rp-count', attributes: { role: 'status' } });
  private readonly body = element('div', { class: 'rp-findings' });
  private sheets: readonly ReadSheet[] = [];
  /** What was reviewed last, to the letter, and how long that took. */
  private reviewed = '';
  private took = 0;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly parts: OpenReviewParts) {
    this.say('Reading the workbook …');
    this.element = element('div', { children: [this.outcome, this.body] });
  }

  /** Reviews these sheets, unless they are those reviewed last; where that takes long, it waits for a press. */
  show(sheets: readonly ReadSheet[]): void {
    const key = JSON.stringify(sheets);
    if (key === this.reviewed) return;
    this.sheets = sheets;
    if (this.reviewed !== '' && this.took > SLOW) this.offer();
    else this.start(key);
  }

  fail(words: string): void {
    clearTimeout(this.timer);
    this.reviewed = '';
    this.say(words);
    this.body.replaceChildren();
    this.parts.ready(false);
  }

  /** Reviews at once, and shows it. Throws what the review throws. */
  reviewNow(sheets: readonly ReadSheet[]): Review {
    clearTimeout(this.timer);
    const start = performance.now();
    const review = this.parts.review(sheets);
    this.took = performance.now() - start;
    this.sheets = sheets;
    this.reviewed = JSON.stringify(sheets);
    this.draw(review);
    return review;
  }

  /** Says so first: the review holds the page up while it computes. */
  private start(key: string): void {
    clearTimeout(this.timer);
    if (!this.sheets.some(isReviewed)) {
      this.reviewed = key;
      this.say('No sheet of this workbook was built here, so there is nothing to review.');
      this.body.replaceChildren();
      this.parts.ready(false);
      return;
    }
    if (this.reviewed === '') this.say('Reviewing …');
    this.timer = setTimeout(() => {
      try {
        this.reviewNow(this.sheets);
      } catch (error) {
        this.fail(`The workbook could not be reviewed: ${reasonOf(error)}`);
      }
    });
  }

  private offer(): void {
    this.say('The workbook has changed since this review.');
    if (this.body.querySelector('.rp-again')) return;
    this.body.prepend(button('Review again', () => {
      this.took = 0;
      this.say('Reviewing …');
      this.start('');
    }, { class: 'rp-again' }));
  }

  private draw(review: Review): void {
    this.say(`${countWords(review.findings)}.`);
    const focused = (document.activeElement as HTMLElement | null)?.dataset.finding;
    this.body.replaceChildren(reviewFacts(review), ...findingsView(review.findings, this.parts.goTo));
    if (focused !== undefined) this.refocus(focused);
    this.parts.ready(true);
  }

  /** The finding that had the focus may be gone; then the next best is the first one. */
  private refocus(key: string): void {
    const ways = [...this.body.querySelectorAll<HTMLElement>('.rp-finding')];
    (ways.find(({ dataset }) => dataset.finding === key) ?? ways[0])?.focus();
  }

  private say(words: string): void {
    if (this.outcome.textContent !== words) this.outcome.textContent = words;
  }
}
