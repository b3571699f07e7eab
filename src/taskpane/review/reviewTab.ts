import './review.css';
import type { SheetContent, SheetHost } from '../../hosts/sheetHost';
import type { Review } from '../../review/reviewFinding';
import type { Reviewer } from '../../review/reviewSheet';
import type { SheetPlan } from '../../worksheets/plan';
import { todayText } from '../../worksheets/record/today';
import { withProgress } from '../build/progress';
import { askAboutTaken } from '../build/takenDialog';
import { writeSheet } from '../build/writeSheet';
import { element } from '../dom';
import type { PaneMemory } from '../memory';
import { reasonOf } from '../reason';
import { readAll, type WorkbookView } from '../sheetWatch';
import { FileReviews, type FileReviewParts } from './fileReviews';
import { OpenReview } from './openReview';
import { ReviewerForm } from './reviewerForm';

/** What the tab needs of the pane around it. */
export interface ReviewParts extends FileReviewParts {
  readonly host: SheetHost;
  readonly planReviewSheet: (review: Review, reviewer: Reviewer) => SheetPlan;
  /** Version of the program, as the sheet states it. */
  readonly version: string;
  readonly memory: PaneMemory;
  /** Shows a cell and gives it the keyboard. */
  readonly goTo: (sheet: string, address: string) => void;
  /** Told the name of a Review sheet that was written, as for the job to hold it. */
  readonly written?: (sheet: string) => Promise<void>;
}

const SHEET = 'Review';

/** Reviews the open workbook, writes the Review sheet, and reviews other workbooks from their files. */
export class ReviewTab implements WorkbookView {
  readonly element: HTMLElement;
  private readonly open: OpenReview;
  private readonly reviewer: ReviewerForm;
  private readonly said = element('p', { attributes: { role: 'status' } });
  private readonly work = element('div', { class: 'rp-review-work' });
  private isBusy = false;

  constructor(private readonly parts: ReviewParts) {
    this.reviewer = new ReviewerForm(parts.memory, todayText(), () => void this.write());
    this.reviewer.element.hidden = true;
    this.open = new OpenReview({ review: parts.review, goTo: parts.goTo, ready: (isReady) => { this.reviewer.element.hidden = !isReady; } });
    this.element = element('div', { class: 'rp-scroll rp-part rp-review', children: [
      element('h2', { children: ['This workbook'] }),
      this.open.element, this.reviewer.element, this.said, this.work, new FileReviews(parts).element,
    ] });
  }

  show(sheets: readonly SheetContent[]): void {
    this.open.show(sheets);
  }

  fail(words: string): void {
    this.open.fail(words);
  }

  private async write(): Promise<void> {
    const signature = this.isBusy ? undefined : this.reviewer.signature();
    if (!signature) return;
    this.isBusy = true;
    this.say('');
    try {
      this.say(await this.written(signature));
    } catch (error) {
      this.say(`The Review sheet is not written: ${reasonOf(error)}`, true);
    } finally {
      this.isBusy = false;
    }
  }

  /** Reads and reviews the workbook as it is now, writes the sheet, and tells what came of it. */
  private async written(signature: { readonly by: string; readonly on: number }): Promise<string> {
    const { host, planReviewSheet, version, written } = this.parts;
    const sheets = await withProgress(this.work, 'Reading the workbook …', readAll(host));
    const plan = planReviewSheet(this.open.reviewNow(sheets), { ...signature, version, name: SHEET });
    const sheet = await writeSheet(host, plan, {
      ask: (name, taken) => askAboutTaken(this.element, name, taken),
      show: (writing) => withProgress(this.work, `Writing “${SHEET}” …`, writing),
    });
    if (!sheet) {
      this.reviewer.focusWrite();
      return 'No Review sheet is written. Everything is as it was.';
    }
    try {
      await written?.(sheet.name);
    } catch (error) {
      return `The sheet “${sheet.name}” is written, but the job does not name it: ${reasonOf(error)}`;
    }
    return `The sheet “${sheet.name}” is written.`;
  }

  private say(words: string, isProblem = false): void {
    this.said.className = isProblem ? 'rp-refuse' : '';
    this.said.textContent = words;
  }
}
